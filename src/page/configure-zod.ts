import * as z from 'zod';

// The page's policy forbids making code from text, which zod would try once; it reads the same without.
z.config({ jitless: true });
