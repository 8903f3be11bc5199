import { drawingStyles } from '#draw';

// the page takes the colours of the drawings with the first that is drawn
const styles = new CSSStyleSheet();
styles.replaceSync(drawingStyles());
document.adoptedStyleSheets = [...document.adoptedStyleSheets, styles];
