import type { StageName } from '#jobs';
import type { ViewProps } from '../view-props.ts';
import { Stage } from './Stage.tsx';

/** What a view edits and shows as long as it has nothing but form and figures. */
const OF: Readonly<Record<string, { readonly stage: StageName; readonly sections?: readonly string[] }>> = {
  ear: { stage: 'ear', sections: ['ear', 'programme'] },
  slope: { stage: 'tank' },
  listen: { stage: 'ear', sections: ['ear', 'programme'] },
  compare: { stage: 'ear', sections: [] },
  file: { stage: 'place' },
};

export function StageAlone(props: ViewProps) {
  const view = props.desk.bench.view.value;
  return <Stage {...props} {...(OF[view] ?? { stage: view as StageName })} />;
}
