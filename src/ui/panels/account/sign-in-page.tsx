'use client';

import { useState } from 'react';
import { SIGN_IN_WORDS } from '#words/account.ts';
import { TextField } from '../../kit/text-field.tsx';
import { AccountForm } from './account-form.tsx';
import { AccountPage } from './account-page.tsx';

export function SignInPage() {
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const words = SIGN_IN_WORDS;
  return (
    <AccountPage title={words.title}>
      <AccountForm words={words} procedure="sign-in/email" body={{ email, password }} other="/sign-up">
        <TextField label={words.email} type="email" autoComplete="username" required value={email} onText={setEmail} />
        <TextField
          label={words.password}
          type="password"
          autoComplete="current-password"
          required
          value={password}
          onText={setPassword}
        />
      </AccountForm>
    </AccountPage>
  );
}
