import { configure } from '@testing-library/dom';

// Component tests wait for what appears; a busy machine may need longer than the library's one second.
configure({ asyncUtilTimeout: 30_000 });
