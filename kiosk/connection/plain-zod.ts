import { config } from 'zod';

// The page is served under a policy that forbids making code from text, which zod would otherwise try. Schemas
// look at this when they are made, so this file comes before every file that holds one.
config({ jitless: true });
