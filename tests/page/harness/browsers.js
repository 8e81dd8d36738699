// The browsers every path is walked in.

import { startChromium } from './chromium.js';
import { startWebKit } from './webkit.js';

/** `ONLY_BROWSER=Chromium` leaves the other out, at the desk. */
export const BROWSERS = [{ name: 'Chromium', start: startChromium }, { name: 'WebKit', start: startWebKit }]
  .filter(({ name }) => !process.env.ONLY_BROWSER || process.env.ONLY_BROWSER === name);
