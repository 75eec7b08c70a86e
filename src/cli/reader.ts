import { READING_JOBS } from './bounded/reading-jobs.ts';
import { serveReading } from './bounded/serve-reading.ts';

serveReading(READING_JOBS, new URL(import.meta.url));
