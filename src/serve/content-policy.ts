/**
 * What a page of the app may load and do: its own files, from where it came from, and nothing else. No inline script or style, no eval, no data:
 * address. Pictures may come from the page's own memory as well (blob:): a drawing becomes one on its way into a PNG file. As a meta tag in the page.
 *
 * Source: W3C, Content Security Policy Level 3. base-uri and form-action do not fall back to default-src (sections 6.3, 6.4), so they are named.
 */
export const PAGE_POLICY = "default-src 'self'; img-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'";

/** The same as a header, which alone can forbid that other pages frame this one (section 6.4: ignored in a meta tag). */
export const HEADER_POLICY = `${PAGE_POLICY}; frame-ancestors 'none'`;
