import { signal } from '@preact/signals';

export type Light = 'auto' | 'day' | 'night';

const KEY = 'earshot.light';
const NEXT = { auto: 'day', day: 'night', night: 'auto' } as const;

/** Colours by day or by night; kept where the browser lets it. */
export const light = signal<Light>(kept());

export function changeLight(): void {
  light.value = NEXT[light.value];
  try {
    localStorage.setItem(KEY, light.value);
  } catch {
    // a private window: for this visit only
  }
}

function kept(): Light {
  try {
    const value = localStorage.getItem(KEY);
    return value === 'day' || value === 'night' ? value : 'auto';
  } catch {
    return 'auto';
  }
}
