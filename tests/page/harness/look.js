// What is looked for on a screen of the page, beside what holds for every page of heapcast. These functions run inside the browser.

/** Anything to be touched that is smaller than a thumb: 44 px either way. */
export function smallTargets() {
  const top = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document;
  const faults = [];
  for (const element of top.querySelectorAll('a[href], button, input, select, textarea, summary, [role=button]')) {
    if (!element.checkVisibility() || element.matches('.skip, [type=file]')) continue;
    // A box or a round to tick is touched by its whole label.
    const target = element.matches('[type=radio], [type=checkbox]') ? element.closest('label') ?? element : element;
    const { width, height } = target.getBoundingClientRect();
    if (width && (width < 43.5 || height < 43.5)) {
      faults.push(`${width.toFixed(0)} x ${height.toFixed(0)} px: <${element.tagName.toLowerCase()}> ${(element.textContent || element.getAttribute('aria-label') || element.id).trim().slice(0, 40)}`);
    }
  }
  return faults;
}

/** Text smaller than 16 px. */
export function smallText() {
  const faults = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (!node.data.trim() || parent.closest('svg, script, style, noscript') || !parent.checkVisibility()) continue;
    const px = Number.parseFloat(getComputedStyle(parent).fontSize);
    if (px < 16) faults.push(`${px} px: "${node.data.trim().slice(0, 40)}"`);
  }
  return faults;
}

/** Words in an empty field that stand out from it by less than 4.5 to 1. */
export function faintHints() {
  const canvas = document.createElement('canvas');
  const paint = canvas.getContext('2d', { willReadFrequently: true });
  const lightness = () => [...paint.getImageData(0, 0, 1, 1).data].slice(0, 3).map((part) => part / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)).reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i], 0);
  const fields = [...document.querySelectorAll('[placeholder]:placeholder-shown')].filter((one) => one.placeholder && one.checkVisibility());
  return fields.flatMap((field) => {
    const { color, opacity } = getComputedStyle(field, '::placeholder');
    const [ground, words] = [[getComputedStyle(field).backgroundColor, 1], [color, Number(opacity)]].map(([fill, alpha]) => {
      [paint.fillStyle, paint.globalAlpha] = [fill, alpha];
      paint.fillRect(0, 0, 1, 1);
      return lightness();
    });
    const ratio = (Math.max(ground, words) + 0.05) / (Math.min(ground, words) + 0.05);
    return ratio < 4.5 ? [`"${field.placeholder}" stands out by ${ratio.toFixed(1)} to 1`] : [];
  });
}

/** Words no reader was meant to see. */
export function strayWords() {
  return (document.body.innerText.match(/.{0,30}(\bundefined\b|\bNaN\b|\[object |\bnull\b).{0,30}/g) ?? []).map((words) => `says "${words}"`);
}

/** What has the focus without showing it; the keyboard can have gone on into the browser's own controls. */
export function unseenFocus() {
  const element = document.activeElement;
  if (!element || element === document.body || !document.hasFocus()) return [];
  const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
  const shown = (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
  return shown ? [] : [`<${element.tagName.toLowerCase()}> ${element.textContent.slice(0, 40)} has the focus and does not show it`];
}
