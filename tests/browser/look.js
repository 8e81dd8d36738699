// What is looked for in a page. These functions run inside the browser; each returns what is wrong, in words.

/** Parts of a page that reach beyond the screen. What may be pushed sideways need not fit, its frame must. */
export function tooWide() {
  const room = document.documentElement.clientWidth;
  const faults = [];
  if (document.documentElement.scrollWidth > room) {
    faults.push(`the page is ${document.documentElement.scrollWidth} px wide on ${room} px`);
  }
  for (const element of document.body.querySelectorAll('*')) {
    if (element.closest('svg') || element.parentElement.closest('.scrolls') || !element.checkVisibility()) continue;
    const { left, right, width } = element.getBoundingClientRect();
    if (width > 0 && (left < -0.5 || right > room + 0.5)) {
      faults.push(`<${element.tagName.toLowerCase()} class="${element.className}"> from ${left} to ${right} on ${room} px: ${element.textContent.slice(0, 60)}`);
    }
  }
  return faults;
}

/** Cells that do not stand under their heading, or, where rows are shown as cards, not beside its words. */
export function strayCells() {
  const faults = [];
  const shown = (element) => element.checkVisibility() && element.getClientRects().length > 0;
  for (const table of document.querySelectorAll('table')) {
    if (!shown(table)) continue;
    const heads = [...table.tHead.rows[0].cells];
    for (const row of table.querySelectorAll('tbody > tr, tfoot > tr')) {
      let column = 0;
      for (const cell of row.cells) {
        const head = heads[column];
        column += cell.colSpan;
        if (!shown(cell)) continue;
        const words = cell.textContent.slice(0, 40);
        if (!head) {
          faults.push(`"${words}" has no column`);
        } else if (shown(head)) {
          const [a, b] = [cell.getBoundingClientRect(), head.getBoundingClientRect()];
          const right = heads.slice(0, column).filter(shown).at(-1).getBoundingClientRect().right;
          if (Math.abs(a.left - b.left) > 1 || Math.abs(a.right - right) > 1 || a.top < b.bottom - 1) {
            faults.push(`"${words}" at ${a.left} to ${a.right}, its heading "${head.textContent}" at ${b.left} to ${right}`);
          }
        } else if (cell.tagName === 'TD' && cell.colSpan === 1) {
          const beside = getComputedStyle(cell, '::before').content;
          if (beside !== JSON.stringify(head.textContent)) faults.push(`"${words}" stands beside ${beside}, not "${head.textContent}"`);
        }
      }
    }
  }
  return faults;
}

/** Text that is cut off or runs out of its box. */
export function cutText() {
  const faults = [];
  for (const element of document.body.querySelectorAll('*')) {
    if (element.closest('svg') || element.matches('.scrolls, .scrolls *') || !element.clientWidth) continue;
    const style = getComputedStyle(element);
    // Charts reach a little into the margin of a phone's page: what holds one is looked at part by part.
    if (style.display === 'inline' || !element.textContent.trim() || element.querySelector('figure')) continue;
    if (!element.checkVisibility()) continue;
    const wide = element.scrollWidth > element.clientWidth + 1;
    const high = style.overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1;
    if (wide || high) {
      faults.push(`<${element.tagName.toLowerCase()} class="${element.className}"> ${element.scrollWidth} px of text in ${element.clientWidth} px: ${element.textContent.slice(0, 60)}`);
    }
  }
  for (const words of document.querySelectorAll('svg text')) {
    const [a, b] = [words.getBoundingClientRect(), words.ownerSVGElement.getBoundingClientRect()];
    if (a.width && words.checkVisibility() && (a.left < b.left - 1 || a.right > b.right + 1 || a.bottom > b.bottom + 1 || a.top < b.top - 3)) {
      faults.push(`in a chart "${words.textContent}" from ${a.left} to ${a.right} of ${b.left} to ${b.right}`);
    }
  }
  return faults;
}

/** Texts that lie on one another, in the page and within each chart. */
export function overlaps() {
  const faults = [];
  const compare = (all, apart) => {
    all.sort((a, b) => a.top - b.top);
    for (let i = 0; i < all.length; i += 1) {
      for (let j = i + 1; j < all.length && all[j].top < all[i].bottom - apart; j += 1) {
        const [a, b] = [all[i], all[j]];
        if (a.of !== b.of && Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1) {
          faults.push(`"${a.words}" and "${b.words}"`);
        }
      }
    }
  };
  const lines = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (!node.data.trim() || parent.closest('svg, .scrolls') || !parent.checkVisibility()) continue;
    range.selectNodeContents(node);
    for (const { left, right, top, bottom, width } of range.getClientRects()) {
      if (width > 0) lines.push({ left, right, top, bottom, of: node, words: node.data.slice(0, 40) });
    }
  }
  compare(lines, 3);
  for (const chart of document.querySelectorAll('svg')) {
    if (!chart.checkVisibility()) continue;
    const words = [...chart.querySelectorAll('text')].map((text) => {
      const { left, right, top, bottom, height } = text.getBoundingClientRect();
      // The box of a line holds room above and below its letters.
      return { left, right, top: top + 0.2 * height, bottom: bottom - 0.2 * height, of: text, words: text.textContent };
    });
    compare(words.filter((one) => one.right > one.left), 0.5);
  }
  return faults;
}

/** Letters too small to read, of charts too. */
export function tooSmall() {
  const least = 11;
  const faults = [];
  for (const words of document.querySelectorAll('svg text')) {
    const chart = words.ownerSVGElement;
    const box = chart.getBoundingClientRect();
    if (!box.width) continue;
    const px = (Number.parseFloat(words.getAttribute('font-size')) / 10) * (box.width / chart.viewBox.baseVal.width);
    if (px < least) faults.push(`${px.toFixed(1)} px in a chart: "${words.textContent}"`);
  }
  return faults;
}

/** Anything a name could have smuggled in. */
export function smuggled() {
  const faults = [...document.querySelectorAll('script, img, iframe, object, link, body b b')].map((e) => e.outerHTML.slice(0, 80));
  if (window.hit !== undefined) faults.push(`a script ran: ${window.hit}`);
  return faults;
}

/** Parts that do not show what is in them. */
export function closedParts() {
  const inside = [...document.querySelectorAll('details > .inside')];
  const shown = (element) => element.checkVisibility() && element.getBoundingClientRect().height > 0;
  return inside.filter((element) => !shown(element)).map((element) => element.parentElement.querySelector('summary').textContent);
}
