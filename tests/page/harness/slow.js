// A slower processor. The browser's own way slows the main thread alone; here the process that holds page and worker is stopped
// for most of the time, many times a second.

import { readFileSync, readdirSync } from 'node:fs';

const PERIOD_MS = 100;

function processes() {
  return readdirSync('/proc').filter((name) => /^\d+$/.test(name)).flatMap((pid) => {
    try {
      const parent = Number(readFileSync(`/proc/${pid}/stat`, 'utf8').replace(/^.*\)/s, '').trim().split(' ')[1]);
      return [{ pid: Number(pid), parent, command: readFileSync(`/proc/${pid}/cmdline`, 'utf8') }];
    } catch { return []; }
  });
}

/** The processes of a browser that show pages, found by its profile. */
function renderers(profile) {
  const all = processes();
  const family = new Set(all.filter(({ command }) => command.includes(`--user-data-dir=${profile}`)).map(({ pid }) => pid));
  for (let before = 0; before !== family.size;) {
    before = family.size;
    for (const { pid, parent } of all) if (family.has(parent)) family.add(pid);
  }
  return all.filter(({ pid, command }) => family.has(pid) && command.includes('--type=renderer')).map(({ pid }) => pid);
}

/** Slows the pages of a Chromium; gives what ends it, which says how much slower they were in truth. */
export function slow(browser, times) {
  const pids = renderers(browser.profile);
  if (!pids.length) throw new Error('no process shows the page');
  const send = (signal) => pids.forEach((pid) => { try { process.kill(pid, signal); } catch { /* it has ended */ } });
  let [ran, stopped, at] = [0, 0, performance.now()];
  let timer;
  let isOver = false;
  const lap = () => { const now = performance.now(); const took = now - at; at = now; return took; };
  const go = () => {
    if (isOver) return;
    stopped += lap();
    send('SIGCONT');
    timer = setTimeout(halt, PERIOD_MS / times);
  };
  const halt = () => {
    ran += lap();
    send('SIGSTOP');
    timer = setTimeout(go, PERIOD_MS - PERIOD_MS / times);
  };
  timer = setTimeout(halt, PERIOD_MS / times);
  return () => {
    isOver = true;
    clearTimeout(timer);
    send('SIGCONT');
    return (ran + stopped) / ran;
  };
}
