// The browser of the scripts: Debian's Chromium, or the one that CHROMIUM_PATH names, without anything that asks the network.
import { chromium } from 'playwright-core';

export function openBrowser() {
  return chromium.launch({
    executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}
