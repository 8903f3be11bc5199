import type { ComponentType } from 'preact';
import type { View } from '../model/workbench.ts';
import type { ViewProps } from './view-props.ts';

type Fetch = () => Promise<ComponentType<ViewProps>>;

/** Fetches a view when it is first opened: drawings, forms and figures are no part of the first load. */
export const FETCH: Readonly<Record<View, Fetch>> = {
  place: () => import('./place/Place.tsx').then((m) => m.Place),
  aerial: () => import('./aerial/Aerial.tsx').then((m) => m.Aerial),
  tank: () => import('./tank/Tank.tsx').then((m) => m.Tank),
  slope: () => import('./slope/Slope.tsx').then((m) => m.Slope),
  detector: () => import('./detector/Detector.tsx').then((m) => m.Detector),
  phones: () => import('./phones/Phones.tsx').then((m) => m.Phones),
  ear: () => import('./ear/Ear.tsx').then((m) => m.Ear),
  listen: () => import('./listen/ListenView.tsx').then((m) => m.ListenView),
  compare: () => import('./compare/CompareView.tsx').then((m) => m.CompareView),
  file: () => import('./file/FileView.tsx').then((m) => m.FileView),
};
