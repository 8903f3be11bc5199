import type { ComponentType } from 'preact';
import type { View } from '../model/workbench.ts';
import type { ViewProps } from './view-props.ts';

type Fetch = () => Promise<ComponentType<ViewProps>>;

/** With the colours of its drawings. */
const drawn =
  (fetch: Fetch): Fetch =>
  () =>
    Promise.all([fetch(), import('./drawing-styles.ts')]).then(([view]) => view);

/** Fetches a view when it is first opened: drawings, forms and figures are no part of the first load. */
export const FETCH: Readonly<Record<View, Fetch>> = {
  place: drawn(() => import('./place/Place.tsx').then((m) => m.Place)),
  aerial: drawn(() => import('./aerial/Aerial.tsx').then((m) => m.Aerial)),
  tank: drawn(() => import('./tank/Tank.tsx').then((m) => m.Tank)),
  slope: drawn(() => import('./slope/Slope.tsx').then((m) => m.Slope)),
  detector: drawn(() => import('./detector/Detector.tsx').then((m) => m.Detector)),
  phones: drawn(() => import('./phones/Phones.tsx').then((m) => m.Phones)),
  ear: drawn(() => import('./ear/Ear.tsx').then((m) => m.Ear)),
  listen: () => import('./listen/ListenView.tsx').then((m) => m.ListenView),
  drawer: () => import('./drawer/DrawerView.tsx').then((m) => m.DrawerView),
  find: drawn(() => import('./find/FindView.tsx').then((m) => m.FindView)),
  tolerance: drawn(() => import('./tolerance/ToleranceView.tsx').then((m) => m.ToleranceView)),
  sheet: () => import('./sheet/SheetView.tsx').then((m) => m.SheetView),
  compare: drawn(() => import('./compare/CompareView.tsx').then((m) => m.CompareView)),
  file: () => import('./file/FileView.tsx').then((m) => m.FileView),
};
