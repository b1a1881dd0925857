import { teamsHighContrastTheme, webDarkTheme, webLightTheme, type Theme } from '@fluentui/react-components';
import { useEffect, useState } from 'react';
import { officeBackground } from '../../host/excel/officeBackground';

/** True where a colour `#rrggbb` is dark (relative luminance of sRGB, roughly). */
function isDark(color: string): boolean {
  const [red = 255, green = 255, blue = 255] = (/^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/i.exec(color) ?? [])
    .slice(1)
    .map(part => parseInt(part, 16));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue < 128;
}

const matches = (query: string) => typeof window.matchMedia === 'function' && window.matchMedia(query).matches;

function currentTheme(): Theme {
  if (matches('(forced-colors: active)')) return teamsHighContrastTheme;
  const background = officeBackground();
  return (background ? isDark(background) : matches('(prefers-color-scheme: dark)')) ? webDarkTheme : webLightTheme;
}

/** The theme that fits Office, or the system where there is no Office: light, dark or high contrast. Follows the system's changes. */
export function useTheme(): Theme {
  const [theme, setTheme] = useState(currentTheme);
  useEffect(() => {
    if (typeof window.matchMedia !== 'function') return undefined;
    const queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(query => window.matchMedia(query));
    const follow = () => setTheme(currentTheme());
    for (const query of queries) query.addEventListener('change', follow);
    return () => {
      for (const query of queries) query.removeEventListener('change', follow);
    };
  }, []);
  return theme;
}
