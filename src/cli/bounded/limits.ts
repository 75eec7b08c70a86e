/** Heap of the process that reads files. MB */
export const MOST_HEAP_MEGABYTES = 350;
/** All of that process: its heap, buffers outside it and Node's own. MB */
export const MOST_MEGABYTES = 450;
