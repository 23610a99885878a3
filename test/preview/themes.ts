// What an editor gives to a page in four themes: the class of its body and the colours, as custom properties.

export interface Theme {
  readonly bodyClass: string;
  readonly properties: Readonly<Record<string, string>>;
}

const font = { "--vscode-font-family": "'Open Sans', sans-serif", "--vscode-font-size": "13px" };

export const THEMES = {
  light: {
    bodyClass: "vscode-light",
    properties: {
      ...font,
      "--vscode-editor-background": "#ffffff",
      "--vscode-editor-foreground": "#3b3b3b",
      "--vscode-descriptionForeground": "#3b3b3b",
      "--vscode-focusBorder": "#005fb8",
      "--vscode-textLink-foreground": "#005fb8",
      "--vscode-dropdown-background": "#ffffff",
      "--vscode-dropdown-foreground": "#3b3b3b",
      "--vscode-dropdown-border": "#cecece",
      "--vscode-button-background": "#005fb8",
      "--vscode-button-foreground": "#ffffff",
      "--vscode-editorError-foreground": "#e51400",
      "--vscode-editorWarning-foreground": "#bf8803",
    },
  },
  dark: {
    bodyClass: "vscode-dark",
    properties: {
      ...font,
      "--vscode-editor-background": "#1f1f1f",
      "--vscode-editor-foreground": "#cccccc",
      "--vscode-descriptionForeground": "#9d9d9d",
      "--vscode-focusBorder": "#0078d4",
      "--vscode-textLink-foreground": "#4daafc",
      "--vscode-dropdown-background": "#313131",
      "--vscode-dropdown-foreground": "#cccccc",
      "--vscode-dropdown-border": "#3c3c3c",
      "--vscode-button-background": "#0078d4",
      "--vscode-button-foreground": "#ffffff",
      "--vscode-editorError-foreground": "#f14c4c",
      "--vscode-editorWarning-foreground": "#cca700",
    },
  },
  "high-contrast-dark": {
    bodyClass: "vscode-high-contrast",
    properties: {
      ...font,
      "--vscode-editor-background": "#000000",
      "--vscode-editor-foreground": "#ffffff",
      "--vscode-descriptionForeground": "rgba(255, 255, 255, 0.7)",
      "--vscode-focusBorder": "#f38518",
      "--vscode-textLink-foreground": "#21a6ff",
      "--vscode-dropdown-background": "#000000",
      "--vscode-dropdown-foreground": "#ffffff",
      "--vscode-dropdown-border": "#6fc3df",
      "--vscode-button-background": "#000000",
      "--vscode-button-foreground": "#ffffff",
      "--vscode-editorError-foreground": "#f48771",
      "--vscode-editorWarning-foreground": "#ffd37c",
    },
  },
  "high-contrast-light": {
    bodyClass: "vscode-high-contrast-light vscode-high-contrast",
    properties: {
      ...font,
      "--vscode-editor-background": "#ffffff",
      "--vscode-editor-foreground": "#292929",
      "--vscode-descriptionForeground": "#292929",
      "--vscode-focusBorder": "#006bbd",
      "--vscode-textLink-foreground": "#0f4a85",
      "--vscode-dropdown-background": "#ffffff",
      "--vscode-dropdown-foreground": "#292929",
      "--vscode-dropdown-border": "#0f4a85",
      "--vscode-button-background": "#0f4a85",
      "--vscode-button-foreground": "#ffffff",
      "--vscode-editorError-foreground": "#b5200d",
      "--vscode-editorWarning-foreground": "#895503",
    },
  },
} as const satisfies Readonly<Record<string, Theme>>;

export type ThemeName = keyof typeof THEMES;
export const THEME_NAMES = Object.keys(THEMES) as readonly ThemeName[];
