package weltwright.trace.ground;

import weltwright.error.UserFacingException;

/** Thrown where the ground was found but its size does not follow from the photo: the user must enter it. */
public final class GroundSizeUnknownException extends UserFacingException {
    private static final long serialVersionUID = 1L;

    GroundSizeUnknownException(String whatIsSeen, String whatToDo) {
        super(whatIsSeen, whatToDo);
    }
}
