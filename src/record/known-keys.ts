import * as z from 'zod';

/** The keys that the object at a path of a schema may have; empty where the path leads nowhere or to no object. */
export function knownKeys(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly string[] {
  const found = path.reduce<readonly z.core.$ZodType[]>((at, key) => at.flatMap((one) => step(one, key)), bare(schema));
  return [...new Set(found.flatMap((one) => (one instanceof z.ZodObject ? Object.keys(one.shape) : [])))];
}

/** What a schema stands for without its wrapping: itself, or each of its alternatives. */
function bare(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  if (schema instanceof z.ZodOptional) return bare(schema.unwrap());
  if (schema instanceof z.ZodUnion) return schema.options.flatMap(bare);
  return [schema];
}

function step(schema: z.core.$ZodType, key: PropertyKey): readonly z.core.$ZodType[] {
  if (schema instanceof z.ZodArray) return bare(schema.element);
  if (!(schema instanceof z.ZodObject)) return [];
  const shape: Record<string, z.core.$ZodType> = schema.shape;
  const inner = typeof key === 'string' && Object.hasOwn(shape, key) ? shape[key] : undefined;
  return inner === undefined ? [] : bare(inner);
}
