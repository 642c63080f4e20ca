package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.GroundLabel;
import weltwright.ground.GroundLines;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.message.Messages;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.PhotoQualityCheck;
import weltwright.trace.capture.SolvedView;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundDetector;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.quality.DamagedImageArea;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

/**
 * The assessment of a photo before its knife is traced: the ground, the camera's position, and advice for a better
 * photo.
 *
 * @param ground the ground's lines in the photo; empty where no ground was found
 * @param notes what was found, with its uncertainty
 * @param advice for a better photo
 * @param question what must be entered or changed before the photo can be traced; empty where it can be traced
 * @param pitchAsked whether the question is for the pitch of the ground's lines
 * @param knife what a trace of the photo need not find again; empty where there is a question
 */
public record PhotoAssessment(
        Optional<SeenGround> ground,
        List<TraceNote> notes,
        List<PhotoAdvice> advice,
        Optional<String> question,
        boolean pitchAsked,
        Optional<LocatedKnife> knife) {
    private static final Messages TEXTS = Messages.of(PhotoAssessment.class);

    /** Length of the pieces in which a line of the ground is drawn, to follow the distortion of the lens; by eye. */
    private static final double PIECE_MM = 8;

    /**
     * The ground in the photo, to be drawn over it.
     *
     * @param lines in pixels of the upright photo
     * @param label of the ground
     */
    public record SeenGround(List<Polyline> lines, GroundLabel label) {}

    /** Assesses a photo. Problems with the photo are part of the assessment and not thrown. */
    public static PhotoAssessment at(Photo photo, TraceSettings settings, ProgressListener progress) {
        progress.at(TEXTS.text("photo-assessment.reading-the-picture"), 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            PhotoAssessment assessment = at(picture, LensEvidence.of(photo, settings), settings, progress);
            return DamagedImageArea.of(photo)
                    .advice()
                    .map(assessment::withFirst)
                    .orElse(assessment);
        } catch (UserFacingException unreadable) {
            return refused(List.of(), unreadable);
        }
    }

    private static PhotoAssessment at(
            DecodedPhoto picture, LensEvidence lens, TraceSettings settings, ProgressListener progress) {
        progress.at(TEXTS.text("photo-assessment.looking-for-what-the-knife"), 0.2);
        try {
            GroundDetector.Detection seen = settings.ground().find(picture, settings.sheetScale(), lens.prior());
            return seen.asUnknownPitch()
                    .map(ruling -> atRuling(picture, ruling, lens))
                    .orElseGet(() -> at(picture, seen.known(), lens, progress));
        } catch (UserFacingException notFound) {
            return refused(PhotoQualityCheck.ofLight(picture), notFound);
        }
    }

    private PhotoAssessment withFirst(PhotoAdvice first) {
        List<PhotoAdvice> all = new ArrayList<>(advice);
        all.add(0, first);
        return new PhotoAssessment(ground, notes, all, question, pitchAsked, knife);
    }

    private static PhotoAssessment refused(List<PhotoAdvice> advice, UserFacingException why) {
        return new PhotoAssessment(
                Optional.empty(), List.of(), advice, Optional.of(why.getMessage()), false, Optional.empty());
    }

    private static PhotoAssessment at(
            DecodedPhoto picture, TraceableGround ground, LensEvidence lens, ProgressListener progress) {
        SolvedView solved = lens.over(ground, picture);
        CameraView view = solved.view();
        List<PhotoAdvice> byGround = PhotoQualityCheck.of(picture, ground, solved);
        List<PhotoAdvice> advice = new ArrayList<>(byGround);
        progress.at(TEXTS.text("photo-assessment.looking-for-the-knife"), 0.6);
        Optional<String> question = Optional.empty();
        Optional<LocatedKnife> knife = Optional.empty();
        try {
            TraceableGround.HiddenAreaSearch search = Tracer.search(picture, ground, view);
            TraceableGround.HiddenArea hidden = search.find(KnifeEdgeFollower.fine(picture, view), List.of());
            knife = Optional.of(new LocatedKnife(ground, solved, search, hidden, byGround));
            advice.addAll(PhotoQualityCheck.ofKnife(picture, view, hidden.contour()));
        } catch (UserFacingException notFound) {
            question = Optional.of(notFound.getMessage());
        }
        progress.at(TEXTS.text("photo-assessment.looked-at"), 1);
        return new PhotoAssessment(
                Optional.of(seen(view, ground.located().groundLines())),
                Tracer.notes(picture, ground, solved),
                advice,
                question,
                false,
                knife);
    }

    /** Assesses a photo with a ruling of unknown pitch, as far as that does not depend on scale. */
    private static PhotoAssessment atRuling(DecodedPhoto picture, TraceableGround ground, LensEvidence lens) {
        CameraView view = ground.located().solve(picture, lens.prior()).view();
        GroundLines asked = new GroundLines(ground.located().groundLines().lines(), new GroundLabel.UnknownRuling());
        return new PhotoAssessment(
                Optional.of(seen(view, asked)),
                List.of(),
                PhotoQualityCheck.ofUnknownSize(picture, ground, view),
                Optional.of(GroundDetector.unknownPitch().getMessage()),
                true,
                Optional.empty());
    }

    private static SeenGround seen(CameraView view, GroundLines sketch) {
        List<Polyline> lines = sketch.lines().stream()
                .map(line -> inPieces(line).map(p -> view.pixel(Plane.GROUND.pointAbove(p))))
                .toList();
        return new SeenGround(lines, sketch.label());
    }

    /** Returns a polyline with additional points between its corners. */
    private static Polyline inPieces(Polyline line) {
        List<Point> corners = line.points();
        List<Point> points = new ArrayList<>();
        int sides = line.closed() ? corners.size() : corners.size() - 1;
        for (int i = 0; i < sides; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % corners.size());
            int pieces = (int) Math.ceil(from.distance(to) / PIECE_MM);
            for (int k = 0; k < pieces; k++) {
                points.add(from.towards(to, (double) k / pieces));
            }
        }
        if (!line.closed()) {
            points.add(corners.get(corners.size() - 1));
        }
        return new Polyline(points, line.closed());
    }
}
