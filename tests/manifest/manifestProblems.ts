/** Child elements of the add-in only manifest in the order its schema asks for (Microsoft Learn, "How to find the proper order of manifest elements"). */
const ORDER: Readonly<Record<string, readonly string[]>> = {
  OfficeApp:
    'Id AlternateId Version ProviderName DefaultLocale DisplayName Description IconUrl HighResolutionIconUrl SupportUrl AppDomains Hosts Requirements DefaultSettings Permissions Dictionary VersionOverrides'.split(
      ' ',
    ),
  VersionOverrides: 'Description Requirements Hosts Resources WebApplicationInfo EquivalentAddins VersionOverrides'.split(' '),
  Host: 'Runtimes AllFormFactors DesktopFormFactor'.split(' '),
  DesktopFormFactor: 'GetStarted FunctionFile ExtensionPoint'.split(' '),
  ExtensionPoint: 'Script Page Metadata Namespace OfficeTab'.split(' '),
  Group: 'Label Icon Control'.split(' '),
  Control: 'Label Supertip Icon Action'.split(' '),
  Resources: 'Images Urls ShortStrings LongStrings'.split(' '),
};

const REQUIRED_ICON_SIZES = ['16', '32', '80'];
/** Characters (Microsoft Learn, "Resources element", "DisplayName", "Description" of the add-in only manifest). */
const LONGEST = { ShortStrings: 125, LongStrings: 250, DisplayName: 125, Description: 250 };

type IconSize = (url: string) => { width: number; height: number } | undefined;

const children = (element: Element, name?: string) => [...element.children].filter(child => !name || child.localName === name);

function all(document: Document, name: string): Element[] {
  return [...document.getElementsByTagName('*')].filter(element => element.localName === name);
}

function orderProblems(document: Document): string[] {
  return Object.entries(ORDER).flatMap(([parent, order]) =>
    all(document, parent).flatMap(element => {
      const names = children(element).map(child => child.localName);
      const ranks = names.map(name => order.indexOf(name));
      if (parent === 'Host' && names.length === 0) return [];
      return names.flatMap((name, index) => {
        if (ranks[index]! < 0) return [`${parent} must not hold ${name}`];
        return index > 0 && ranks[index]! < ranks[index - 1]! ? [`${parent}: ${name} must stand before ${names[index - 1]}`] : [];
      });
    }),
  );
}

function resourceProblems(document: Document): string[] {
  const resources = all(document, 'Resources').flatMap(element => children(element).flatMap(group => children(group)));
  const defined = resources.map(element => element.getAttribute('id') ?? '');
  const used = [...document.getElementsByTagName('*')].flatMap(element => element.getAttribute('resid') ?? []);
  return [
    ...used.filter(id => !defined.includes(id)).map(id => `resid ${id} is not defined`),
    ...defined.filter(id => !used.includes(id)).map(id => `resource ${id} is not used`),
    ...defined.filter((id, index) => defined.indexOf(id) !== index).map(id => `resource ${id} is defined twice`),
    ...defined.filter(id => id.length > 32).map(id => `resource id ${id} is longer than 32 characters`),
  ];
}

function lengthProblems(document: Document): string[] {
  return Object.entries(LONGEST).flatMap(([name, longest]) =>
    all(document, name)
      .flatMap(element => [element, ...children(element)])
      .filter(element => (element.getAttribute('DefaultValue') ?? '').length > longest)
      .map(element => `${element.getAttribute('id') ?? name} is too long`),
  );
}

function urlOf(document: Document, resid: string | null | undefined): string | undefined {
  const resource = all(document, 'Resources').flatMap(element => [...element.getElementsByTagName('*')]);
  return resource.find(element => element.getAttribute('id') === resid)?.getAttribute('DefaultValue') ?? undefined;
}

function addressProblems(document: Document): string[] {
  const named = 'IconUrl HighResolutionIconUrl SupportUrl SourceLocation Image Url'
    .split(' ')
    .flatMap(name => all(document, name));
  const urls = [
    ...named.map(element => element.getAttribute('DefaultValue')),
    ...all(document, 'AppDomain').map(element => element.textContent),
  ];
  return urls.filter((url): url is string => url !== null && !url.startsWith('https://')).map(url => `${url} is not HTTPS`);
}

function iconProblems(document: Document, iconSize: IconSize): string[] {
  const wrong = (what: string, url: string | undefined, size: number) => {
    const found = url === undefined ? undefined : iconSize(url);
    return found?.width === size && found.height === size ? [] : [`${what} is not ${size} × ${size} pixels`];
  };
  const icons = all(document, 'Icon').flatMap(icon => {
    const images = children(icon, 'Image');
    const sizes = images.map(image => image.getAttribute('size') ?? '');
    return [
      ...REQUIRED_ICON_SIZES.filter(size => !sizes.includes(size)).map(size => `an icon lacks size ${size}`),
      ...images.flatMap(image =>
        wrong(
          `icon ${image.getAttribute('resid')}`,
          urlOf(document, image.getAttribute('resid')),
          Number(image.getAttribute('size')),
        ),
      ),
    ];
  });
  const listed = (name: string) => all(document, name)[0]?.getAttribute('DefaultValue') ?? undefined;
  return [
    ...icons,
    ...wrong('IconUrl', listed('IconUrl'), 32),
    ...wrong('HighResolutionIconUrl', listed('HighResolutionIconUrl'), 64),
  ];
}

function runtimeProblems(document: Document): string[] {
  const runtime = all(document, 'Runtime')[0];
  const resid = runtime?.getAttribute('resid');
  const pageOf = (name: string) =>
    all(document, name).map(
      element => element.getAttribute('resid') ?? children(element, 'SourceLocation')[0]?.getAttribute('resid'),
    );
  const sharing = { Page: pageOf('Page'), FunctionFile: pageOf('FunctionFile'), Action: pageOf('Action') };
  const sets = new Map(all(document, 'Set').map(set => [set.getAttribute('Name'), set.getAttribute('MinVersion')]));
  const namespace = urlOf(document, all(document, 'Namespace')[0]?.getAttribute('resid'));
  return [
    ...(runtime?.getAttribute('lifetime') === 'long' ? [] : ['the shared runtime has no long lifetime']),
    ...Object.entries(sharing).flatMap(([name, found]) =>
      found.length > 0 && found.every(id => id === resid) ? [] : [`${name} does not use the shared runtime`],
    ),
    ...(sets.get('SharedRuntime') === '1.1' ? [] : ['the requirement set SharedRuntime 1.1 is missing']),
    // Microsoft Learn, "Custom Functions requirement sets": 1.4 stands in Microsoft 365 (Windows, Mac, web), not in perpetual or LTSC Excel.
    ...(sets.get('CustomFunctionsRuntime') === '1.4' ? [] : ['the requirement set CustomFunctionsRuntime 1.4 is missing']),
    // With an id of its own the pane is another pane than that of the shared runtime.
    ...(all(document, 'TaskpaneId').length === 0 ? [] : ['TaskpaneId stands against the shared runtime']),
    // Page layout and the events of all sheets, which src/host/excel uses without asking. Source: @types/office-js, "[Api set: …]".
    ...(sets.get('ExcelApi') === '1.9' ? [] : ['the requirement set ExcelApi 1.9 is missing']),
    ...(namespace === 'HOSE' ? [] : [`the namespace is ${namespace}`]),
  ];
}

/**
 * What is wrong with an add-in only manifest, by the rules that can be checked without Microsoft's service.
 * @param document the manifest, parsed
 * @param iconSize size of the picture at an address; undefined where there is none
 */
export function manifestProblems(document: Document, iconSize: IconSize): string[] {
  const broken = document.getElementsByTagName('parsererror')[0];
  if (broken) return [`not well-formed: ${broken.textContent}`];
  const id = all(document, 'Id')[0]?.textContent ?? '';
  const version = all(document, 'Version')[0]?.textContent ?? '';
  return [
    ...(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(id) ? [] : [`Id ${id} is no GUID`]),
    ...(/^\d+(\.\d+){3}$/.test(version) ? [] : [`Version ${version} is not a.b.c.d`]),
    ...(/^0\./.test(version) ? [`Version ${version} is lower than 1.0.0.0`] : []),
    ...orderProblems(document),
    ...resourceProblems(document),
    ...lengthProblems(document),
    ...addressProblems(document),
    ...iconProblems(document, iconSize),
    ...runtimeProblems(document),
  ];
}
