/**
 * What a page of the app may load and do: its own files, from where it came from, and nothing else. No inline script or style, no eval, no data: or
 * blob: address. As a meta tag in the page.
 *
 * Source: W3C, Content Security Policy Level 3. base-uri and form-action do not fall back to default-src (section 6.3, 6.4), so they are named.
 */
export const PAGE_POLICY = "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'";

/** The same as a header, which alone can forbid that other pages frame this one (section 6.4.2: ignored in a meta tag). */
export const HEADER_POLICY = `${PAGE_POLICY}; frame-ancestors 'none'`;
