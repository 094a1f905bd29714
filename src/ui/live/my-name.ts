import { createContext, useContext } from 'react';

/** What the person at this screen is called; empty where nobody is signed in. */
export const MyName = createContext('');

export const useMyName = (): string => useContext(MyName);
