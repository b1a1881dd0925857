// dist/: everything a static HTTPS host needs. BASE_URL says where it will stand.
import { step } from './step.mjs';

step('webpack/bin/webpack.js', ['--mode', process.argv.includes('--development') ? 'development' : 'production']);
