import type { Plugin } from 'vite';

/** Writes the policy into the page, for hosts that send none. The page that is built only: while developing, styles and reloads come inline. */
export function contentPolicy(policy: string): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: policy }, injectTo: 'head-prepend' },
    ],
  };
}
