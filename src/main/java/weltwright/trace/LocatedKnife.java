package weltwright.trace;

import java.util.List;
import weltwright.trace.capture.SolvedView;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.report.PhotoAdvice;

/**
 * What a photo shows whatever the knife measures: the ground, the camera over it, and the area that the knife hides. An
 * assessment finds it, and a trace of the same photo with the same ground and lens need not find it again.
 *
 * @param search finds the area with what the user told
 * @param hidden the area, of which the user told nothing
 * @param advice on the photo, by ground and camera alone
 */
public record LocatedKnife(
        TraceableGround ground,
        SolvedView solved,
        TraceableGround.HiddenAreaSearch search,
        TraceableGround.HiddenArea hidden,
        List<PhotoAdvice> advice) {}
