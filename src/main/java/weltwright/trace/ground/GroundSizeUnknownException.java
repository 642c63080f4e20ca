package weltwright.trace.ground;

import weltwright.error.UserFacingException;

/** What the knife lies on was seen, and the picture leaves its size open: that has to be told. */
public final class GroundSizeUnknownException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    GroundSizeUnknownException(String whatIsSeen, String whatToDo) {
        super(whatIsSeen, whatToDo);
    }
}
