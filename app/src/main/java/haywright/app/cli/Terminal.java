package haywright.app.cli;

/** Whether somebody sits there. Nothing waits for an answer, or opens a window, where nobody does. */
final class Terminal {
    private Terminal() {}

    /** The launcher says {@code -Djdk.console=java.base}, without which a JDK from 22 on always has a console. */
    @SuppressWarnings("SystemConsoleNull")
    static boolean isThere() {
        return System.console() != null;
    }
}
