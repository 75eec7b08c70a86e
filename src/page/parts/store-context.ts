import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Store } from '../store.ts';

export const StoreContext = createContext<Store | null>(null);

/** The page's state; every view stands inside its provider. */
export function useStore(): Store {
  const store = useContext(StoreContext);
  if (!store) throw new Error('a view stands outside the page');
  return store;
}
