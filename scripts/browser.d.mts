import type { Browser } from 'playwright-core';

export function browserPath(): string | undefined;
export function openBrowser(...more: readonly string[]): Promise<Browser>;
