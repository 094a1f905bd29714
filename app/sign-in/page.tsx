import { SignInPage } from '#ui/panels/account/sign-in-page.tsx';

export default function Page() {
  return <SignInPage />;
}
