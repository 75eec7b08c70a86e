/** The value of an own key of an object or list, undefined for anything else; never reaches a prototype. */
export function getOwn(value: unknown, key: PropertyKey): unknown {
  return typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<PropertyKey, unknown>)[key]
    : undefined;
}
