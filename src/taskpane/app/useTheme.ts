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

/*
 * Excel tells no event when its theme changes: OfficeThemeChanged is of the mailbox, in Outlook
 * (https://learn.microsoft.com/javascript/api/office/office.eventtype). A theme is changed elsewhere in Excel, so that it is enough to look
 * again when somebody comes back to the pane.
 */
const COMING_BACK = ['focus', 'pointerenter', 'visibilitychange'] as const;

/**
 * The theme that fits Office, or the system where there is no Office: light, dark or high contrast. Follows a change of the system at once,
 * a change of Office's theme when somebody comes back to the pane.
 */
export function useTheme(): Theme {
  const [theme, setTheme] = useState(currentTheme);
  useEffect(() => {
    const follow = () => setTheme(currentTheme());
    const queries =
      typeof window.matchMedia === 'function'
        ? ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map(query => window.matchMedia(query))
        : [];
    for (const query of queries) query.addEventListener('change', follow);
    // Captured: none of these three comes up from where it happened.
    for (const event of COMING_BACK) window.addEventListener(event, follow, true);
    return () => {
      for (const query of queries) query.removeEventListener('change', follow);
      for (const event of COMING_BACK) window.removeEventListener(event, follow, true);
    };
  }, []);
  return theme;
}
