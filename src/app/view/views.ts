import type { ComponentType } from 'preact';
import type { View } from '../model/workbench.ts';
import type { ViewProps } from './view-props.ts';

type Fetch = () => Promise<ComponentType<ViewProps>>;

/** The view of a step by itself: its form and its figures. */
const stage: Fetch = () => import('./stage/StageAlone.tsx').then((m) => m.StageAlone);

/** Fetches a view when it is first opened: drawings, forms and figures are no part of the first load. */
export const FETCH: Readonly<Record<View, Fetch>> = {
  place: stage,
  aerial: stage,
  tank: () => import('./tank/Tank.tsx').then((m) => m.Tank),
  slope: stage,
  detector: stage,
  phones: stage,
  ear: stage,
  listen: () => import('./listen/ListenView.tsx').then((m) => m.ListenView),
  compare: () => import('./compare/CompareView.tsx').then((m) => m.CompareView),
  file: () => import('./file/FileView.tsx').then((m) => m.FileView),
};
