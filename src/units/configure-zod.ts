import * as z from 'zod';

// Making code from text, which zod would do for each form, is forbidden on the page by its policy and takes a command longer than it saves: it reads the same without.
z.config({ jitless: true });
