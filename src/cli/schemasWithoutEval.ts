import * as z from 'zod';

// A command reads one file: making code of each schema takes longer than reading with it. This must run before any schema is made.
z.config({ jitless: true });
