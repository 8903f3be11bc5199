/** How a straight element points: `vertical`, or `horizontal` with the compass bearing of its broadside [rad]. */
export type Orientation = { readonly kind: 'vertical' } | { readonly kind: 'horizontal'; readonly broadside: number };
