/**
 * What brings a kept document from one version of its form to the next: step 0 from version 1 to
 * version 2, and so on. Version 1, the first, is the form of form.ts today.
 */
export type DocumentStep = (content: Readonly<Record<string, unknown>>) => Record<string, unknown>

export const documentSteps: readonly DocumentStep[] = []
