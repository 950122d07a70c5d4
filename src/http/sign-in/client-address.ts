/** Header that tells the sign-in library whose tries to count. Always set by us, never taken from a request. */
export const CLIENT_ADDRESS_HEADER = 'x-axlebook-client';
