import { Button, MessageBar, MessageBarActions, MessageBarBody, MessageBarTitle } from '@fluentui/react-components';
import { Component, type ReactNode } from 'react';
import { errorSentence } from '../../workbook/errorSentence';

/** Keeps a view's defect inside the view: says so, and lets the user start it again. */
export class ViewBoundary extends Component<{ readonly children: ReactNode }, { readonly message?: string }> {
  override state: { readonly message?: string } = {};

  static getDerivedStateFromError(error: unknown) {
    return { message: errorSentence(error) };
  }

  override render() {
    if (this.state.message === undefined) return this.props.children;
    return (
      <MessageBar intent="error" layout="multiline">
        <MessageBarBody>
          <MessageBarTitle>This view stopped</MessageBarTitle>
          {this.state.message} Your workbook was not changed by this.
        </MessageBarBody>
        <MessageBarActions>
          <Button onClick={() => this.setState({ message: undefined })}>Start it again</Button>
        </MessageBarActions>
      </MessageBar>
    );
  }
}
