import { z } from 'zod';
import { CAPS } from './caps.ts';
import { Name } from './name.ts';

const Email = z
  .string()
  .trim()
  .toLowerCase()
  .max(CAPS.emailLength)
  .pipe(z.email('This is not an e-mail address. Check it.'));

const Password = z
  .string()
  .max(CAPS.passwordLength, `A password has at most ${CAPS.passwordLength} characters. Choose a shorter one.`);

/** What `POST /api/auth/sign-up/email` takes. */
export const SignUp = z.object({
  name: Name,
  email: Email,
  password: Password.min(
    CAPS.leastPasswordLength,
    `A password has at least ${CAPS.leastPasswordLength} characters. Choose a longer one.`,
  ),
});

/** What `POST /api/auth/sign-in/email` takes. */
export const SignIn = z.object({ email: Email, password: Password });
