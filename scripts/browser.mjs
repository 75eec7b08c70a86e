// The browser of the scripts and of the tests, without anything that asks the network: the one that CHROMIUM_PATH names, else Chromium without
// windows, which takes half the time of one that draws its own buttons out of sight, else any Chromium.
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const PLACES = [process.env.CHROMIUM_PATH, '/usr/bin/chromium-headless-shell', '/usr/bin/chromium', '/usr/bin/google-chrome'];

/** @returns {string | undefined} the program; undefined where there is none */
export function browserPath() {
  return PLACES.find((path) => path !== undefined && existsSync(path));
}

/** @param {...string} more further arguments */
export function openBrowser(...more) {
  const executablePath = browserPath();
  if (executablePath === undefined) throw new Error('no browser; set CHROMIUM_PATH or install chromium-headless-shell');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      ...more,
    ],
  });
}
