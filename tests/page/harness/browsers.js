// The browsers every path is walked in.

import { startChromium } from './chromium.js';
import { startFirefox } from './firefox.js';
import { startWebKit } from './webkit.js';

/** `ONLY_BROWSER=Chromium` leaves the others out, at the desk. */
export const BROWSERS = [{ name: 'Chromium', start: startChromium }, { name: 'WebKit', start: startWebKit }, { name: 'Firefox', start: startFirefox }]
  .filter(({ name }) => !process.env.ONLY_BROWSER || process.env.ONLY_BROWSER === name);
