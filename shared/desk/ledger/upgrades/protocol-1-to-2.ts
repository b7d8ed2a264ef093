/** Version 2 knows of a value how it was counted: optional, so that a protocol of before is one of now. */
export const protocolFrom1To2 = (value: unknown): unknown => value
