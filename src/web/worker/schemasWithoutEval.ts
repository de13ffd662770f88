import * as z from 'zod';

// The page's content policy forbids code made of text; this must run before any schema is made.
z.config({ jitless: true });
