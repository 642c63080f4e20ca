package weltwright.io;

/**
 * Identifies a process of this machine by its id and start time, because ids are reused.
 *
 * @param text id, a space, and the start time in ISO 8601, or nothing after the space where the system does not tell it
 */
public record ProcessIdentity(String text) {

    /** Returns the identity of this process. */
    public static ProcessIdentity current() {
        return of(ProcessHandle.current());
    }

    private static ProcessIdentity of(ProcessHandle process) {
        return new ProcessIdentity(process.pid() + " "
                + process.info().startInstant().map(Object::toString).orElse(""));
    }

    /** Returns whether the process is still running; false for a text that identifies none. */
    public boolean isRunning() {
        int space = text.indexOf(' ');
        if (space < 1) {
            return false;
        }
        try {
            return ProcessHandle.of(Long.parseLong(text.substring(0, space)))
                    .map(ProcessIdentity::of)
                    .filter(this::equals)
                    .isPresent();
        } catch (NumberFormatException e) {
            return false;
        }
    }
}
