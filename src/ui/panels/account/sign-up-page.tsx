'use client';

import { useState } from 'react';
import { CAPS } from '#wire/caps.ts';
import { SIGN_UP_WORDS } from '#words/account.ts';
import { TextField } from '../../kit/text-field.tsx';
import { AccountForm } from './account-form.tsx';
import { AccountPage } from './account-page.tsx';

export function SignUpPage() {
  const [name, setName] = useState('');
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const words = SIGN_UP_WORDS;
  return (
    <AccountPage title={words.title}>
      <AccountForm words={words} procedure="sign-up/email" body={{ name, email, password }} other="/sign-in">
        <TextField
          label={words.name}
          hint={words.nameHint}
          autoComplete="name"
          required
          maxLength={CAPS.nameLength}
          value={name}
          onText={setName}
        />
        <TextField label={words.email} type="email" autoComplete="username" required value={email} onText={setEmail} />
        <TextField
          label={words.password}
          hint={words.passwordHint(CAPS.leastPasswordLength)}
          type="password"
          autoComplete="new-password"
          required
          minLength={CAPS.leastPasswordLength}
          maxLength={CAPS.passwordLength}
          value={password}
          onText={setPassword}
        />
      </AccountForm>
    </AccountPage>
  );
}
