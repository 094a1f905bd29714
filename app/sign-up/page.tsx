import { SignUpPage } from '#ui/panels/account/sign-up-page.tsx';

export default function Page() {
  return <SignUpPage />;
}
