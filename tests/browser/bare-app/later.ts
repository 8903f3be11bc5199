export const later = (): string => `later of ${import.meta.env.VITE_BARE_VERSION}`;
