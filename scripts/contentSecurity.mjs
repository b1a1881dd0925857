import { createHash } from 'node:crypto';

const policy = directives =>
  Object.entries(directives)
    .map(([name, sources]) => `${name} ${sources}`)
    .join('; ');

/** The try-out page: nothing but what stands beside it. The spreadsheet and the pane set styles by script. */
export const tryOutPolicy = policy({
  'default-src': "'none'",
  'script-src': "'self'",
  'worker-src': "'self'",
  'style-src': "'self' 'unsafe-inline'",
  'img-src': "'self' data: blob:",
  'font-src': "'self' data:",
  'connect-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
});

const hashOf = (html, tag) => {
  const text = new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`).exec(html)?.[1];
  return text === undefined ? "'none'" : `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
};

/** A page of the help: no other script and no other style than the ones written into it. */
export function helpPolicy(html) {
  return policy({
    'default-src': "'none'",
    'script-src': hashOf(html, 'script'),
    'style-src': hashOf(html, 'style'),
    'img-src': "'self'",
    'base-uri': "'none'",
    'form-action': "'none'",
  });
}

/**
 * The pane in Excel. UNVERIFIED: Microsoft names no complete list (OfficeDev/office-js issue 1005, open since 2019). Its scripts come from the CDN
 * (appsforoffice.microsoft.com, of late *.static.microsoft: OfficeDev/office-js-docs-pr pull request 5882; the AJAX library from ajax.aspnetcdn.com)
 * and set styles (OfficeDev/office-js issue 1687); they report to services of their own. No `frame-ancestors`: a page cannot say that of itself, and Excel on the web
 * frames it. Should Excel refuse to load the pane, take this policy out first.
 */
export const panePolicy = localOfficeJs => {
  const scripts = localOfficeJs
    ? ''
    : ' https://appsforoffice.microsoft.com https://*.static.microsoft https://ajax.aspnetcdn.com';
  const services =
    'https://*.microsoft.com https://*.static.microsoft https://*.office.com https://*.office.net https://*.office365.com';
  return policy({
    'default-src': "'self'",
    'script-src': `'self'${scripts}`,
    'style-src': "'self' 'unsafe-inline'",
    'img-src': "'self' data: blob:",
    'font-src': "'self' data: https://*.static.microsoft https://*.office.net",
    'connect-src': `'self' ${services}`,
    'object-src': "'none'",
    'base-uri': "'self'",
  });
};
