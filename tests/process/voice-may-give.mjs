import { readEnvironment } from '../../dist/server/config/environment.js';
import { serve } from '../../dist/server/serve.js';

// The built kiosk with the one switch turned on that lets voice log a dose: no setting of the kiosk's own does that.
const served = await serve(readEnvironment(process.env, process.cwd()), false, () => {}, true);
console.log(`Byreside is ready at ${served.address}`);
