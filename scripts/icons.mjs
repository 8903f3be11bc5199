// Draws the icons of the app as points from src/app/public/icon.svg. Run by hand after that drawing changes.
import { readFileSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { findChromium } from './chromium.mjs';

const FOLDER = 'src/app/public';
const svg = readFileSync(`${FOLDER}/icon.svg`, 'utf8');
const browser = await chromium.launch({ executablePath: findChromium(), args: ['--no-sandbox', '--disable-dev-shm-usage'] });
for (const size of [192, 512]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${svg}`);
  await page.screenshot({ path: `${FOLDER}/icon-${size}.png` });
}
await browser.close();
