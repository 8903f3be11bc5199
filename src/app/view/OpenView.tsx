import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { View } from '../model/workbench.ts';
import type { ViewProps } from './view-props.ts';
import { FETCH } from './views.ts';

/** The view that is open, fetched when it is first wanted; the one before it stays until then. */
export function OpenView(props: ViewProps) {
  const view = props.desk.bench.view.value;
  const [opened, setOpened] = useState<{ readonly view: View; readonly Content: ComponentType<ViewProps> } | null>(null);
  const [missing, setMissing] = useState<View | null>(null);
  useEffect(() => {
    if (!view) return;
    let wanted = true;
    FETCH[view]().then(
      (Content) => {
        if (wanted) setOpened({ view, Content });
      },
      () => {
        if (wanted) setMissing(view);
      },
    );
    return () => {
      wanted = false;
    };
  }, [view]);
  if (!view)
    return (
      <p class="view">Open a step, from mast to ear, to see why it takes what it takes, and to change it: here, or in the picture above.</p>
    );
  if (opened?.view !== view && missing === view)
    return (
      <p class="notice bad" role="alert">
        This part of the page could not be loaded. Your set is safe: load the page again once there is a connection.
      </p>
    );
  return <div aria-busy={opened?.view !== view}>{opened && <opened.Content key={opened.view} {...props} />}</div>;
}
