package weltwright.job;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.image.Photo;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.Guard;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.outline.UncertainStretch;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.TraceNote;
import weltwright.units.PrintScale;

/**
 * The content of {@code job.json} in a job file. Component names are the names in the file; they do not change when
 * classes of the program are renamed. Lengths are in mm, angles in radians.
 *
 * <p>A change of a component needs a higher {@link #VERSION}. A reader accepts its own version and older ones, which
 * {@link JobMigrations} converts, and rejects newer ones and unknown fields, so that an older program cannot drop data
 * of a newer one.
 */
@JsonNaming(SnakeCaseStrategy.class)
record JobDocument(
        String format,
        int version,
        String units,
        String customer,
        String knife,
        LocalDate begun,
        @JsonSetter(nulls = Nulls.SET) @Nullable LocalDate due,
        String notes,
        @JsonSetter(nulls = Nulls.SET) @Nullable PictureEntry photo,
        Measured measured,
        @JsonSetter(nulls = Nulls.SET) @Nullable Traced trace,
        @JsonSetter(nulls = Nulls.SET) @Nullable Shape outline,
        List<UnsureEntry> toLookAt,
        List<CaliperEntry> calipers,
        @JsonSetter(nulls = Nulls.SET) @Nullable Side spineTold,
        SheathSpecJson sheath) {
    static final String FORMAT = "weltwright job";
    static final String UNITS = "mm";
    static final int VERSION = 8;

    /** Greatest absolute coordinate of a knife's point; a greater one is damage to the file. Chosen by eye. */
    private static final double GREATEST_COORDINATE_MM = 2000;

    static JobDocument of(Job job) {
        return new JobDocument(
                FORMAT,
                VERSION,
                UNITS,
                job.customer(),
                job.knifeName(),
                job.begun(),
                job.due().orElse(null),
                job.notes(),
                job.photo().map(PictureEntry::of).orElse(null),
                Measured.of(job.settings(), job.shaping()),
                job.trace().map(Traced::of).orElse(null),
                job.silhouette().map(Shape::of).orElse(null),
                job.unsure().stream().map(UnsureEntry::of).toList(),
                job.calipers().stream().map(CaliperEntry::of).toList(),
                job.spineOnLeft().map(Side::spine).orElse(null),
                SheathSpecJson.of(job.spec()));
    }

    /**
     * Converts the document to a job.
     *
     * @param picture the photo of {@link #photo}
     * @throws IllegalArgumentException if the values are inconsistent
     * @throws weltwright.error.UserFacingException if a measure is out of bounds
     */
    Job job(Optional<Photo> picture) {
        return new Job(
                JobFields.CUSTOMER.read(customer),
                JobFields.KNIFE_NAME.read(knife),
                begun,
                Optional.ofNullable(due),
                JobFields.NOTES.read(notes),
                picture,
                measured.settings(),
                Optional.ofNullable(trace).map(Traced::trace),
                Optional.ofNullable(outline).map(Shape::silhouette),
                toLookAt.stream().map(UnsureEntry::unsure).toList(),
                calipers.stream().map(CaliperEntry::caliper).toList(),
                Optional.ofNullable(spineTold).map(side -> side == Side.LEFT),
                measured.shaping(),
                sheath.spec());
    }

    /**
     * A photo in the job file.
     *
     * @param name file name that the user gave
     * @param entry name of its entry in the zip file
     */
    @JsonNaming(SnakeCaseStrategy.class)
    record PictureEntry(String name, String entry) {

        /** The entry gets a fixed name, since not every system can unpack every file name. */
        static PictureEntry of(Photo photo) {
            return new PictureEntry(photo.name(), "photo." + photo.format().extension());
        }
    }

    /**
     * The user's input on the knife and the ground. The sheet's scale is measured over nominal length, across and down;
     * the ground is in the notation of {@link GroundChoice#words}.
     */
    @JsonNaming(SnakeCaseStrategy.class)
    record Measured(
            double handleThickness,
            double spineThickness,
            List<ThicknessEntry> thicknessAlong,
            double edgeThickness,
            Grind.Kind grind,
            double grindHeight,
            double handleSquareness,
            double tipDrop,

            @JsonProperty("focal_35mm") @JsonSetter(nulls = Nulls.SET) @Nullable
            Double focal35mm,

            Pair sheetScale,
            String ground,
            @JsonSetter(nulls = Nulls.SET) @Nullable PhoneLensJson phone) {

        static Measured of(TraceSettings settings, CrossSectionShape shaping) {
            return new Measured(
                    settings.handleThicknessMm(),
                    settings.spineThicknessMm(),
                    settings.thickness().readings().stream()
                            .map(ThicknessEntry::of)
                            .toList(),
                    shaping.edgeThicknessMm(),
                    shaping.grind().kind(),
                    shaping.grind().heightMm(),
                    shaping.handleExponent(),
                    settings.tipDropMm(),
                    settings.focal35mm().isPresent() ? settings.focal35mm().getAsDouble() : null,
                    new Pair(settings.sheetScale().x(), settings.sheetScale().y()),
                    settings.ground().words(),
                    settings.phone().map(PhoneLensJson::of).orElse(null));
        }

        CrossSectionShape shaping() {
            return new CrossSectionShape(
                    JobFields.EDGE_THICKNESS.checkedMm(edgeThickness),
                    new Grind(grind, JobFields.GRIND_HEIGHT.checkedMm(grindHeight)),
                    JobFields.HANDLE_SQUARENESS.checked(handleSquareness));
        }

        TraceSettings settings() {
            return new TraceSettings(
                    JobFields.HANDLE_THICKNESS.checkedMm(handleThickness),
                    JobFields.SPINE_THICKNESS.checkedMm(spineThickness),
                    JobFields.TIP_DROP.checkedMm(tipDrop),
                    focal35mm == null
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(JobFields.FOCAL_35MM.checked(focal35mm)),
                    new PrintScale(
                            JobFields.SHEET_SCALE.checked(sheetScale.x), JobFields.SHEET_SCALE.checked(sheetScale.y)),
                    GroundChoice.parse(ground),
                    Optional.ofNullable(phone).map(PhoneLensJson::lens),
                    new ThicknessProfile(
                            thicknessAlong.stream().map(ThicknessEntry::reading).toList()));
        }
    }

    /** A thickness measured along the knife. */
    @JsonNaming(SnakeCaseStrategy.class)
    record ThicknessEntry(double fromTip, double measured) {

        static ThicknessEntry of(ThicknessProfile.Reading reading) {
            return new ThicknessEntry(reading.fromTipMm(), reading.thicknessMm());
        }

        ThicknessProfile.Reading reading() {
            return new ThicknessProfile.Reading(
                    JobFields.THICKNESS_PLACE.checkedMm(fromTip), JobFields.THICKNESS.checkedMm(measured));
        }
    }

    /** The result of the trace before corrections. */
    @JsonNaming(SnakeCaseStrategy.class)
    record Traced(
            Shape outline,
            Lens lens,
            Triple rotation,
            Triple translation,
            double midPlaneHeight,
            Pair midPlaneSlope,
            double onSheetAngle,
            Pair onSheetShift,
            double error95,
            List<ErrorTermJson> errorParts,
            double bladeLength95,
            double edgeSure,
            List<UnsureEntry> unsure,
            List<TraceNote> notes) {

        static Traced of(Trace trace) {
            CameraView view = trace.view();
            return new Traced(
                    Shape.of(trace.silhouette()),
                    Lens.of(view.camera()),
                    Triple.of(view.rodrigues()),
                    Triple.of(view.translation()),
                    trace.midPlane().heightMm(),
                    Pair.of(trace.midPlane().slope()),
                    trace.onGround().angleRad(),
                    Pair.of(trace.onGround().shift()),
                    trace.error().error95Mm(),
                    trace.error().parts().stream().map(ErrorTermJson::of).toList(),
                    trace.landmarkError().bladeLength95Mm(),
                    trace.landmarkError().edgeSure(),
                    trace.unsure().stream().map(UnsureEntry::of).toList(),
                    trace.notes());
        }

        Trace trace() {
            return new Trace(
                    outline.silhouette(),
                    new CameraView(lens.camera(), rotation.vector(), translation.vector()),
                    new Plane(midPlaneHeight, midPlaneSlope.point()),
                    new RigidMotion(onSheetAngle, onSheetShift.point()),
                    new ErrorBudget(
                            error95,
                            errorParts.stream().map(ErrorTermJson::part).toList()),
                    new LandmarkUncertainty(bladeLength95, edgeSure),
                    unsure.stream().map(UnsureEntry::unsure).toList(),
                    List.copyOf(notes));
        }
    }

    /** A pinhole camera: focal length and principal point in pixels, two coefficients of radial distortion. */
    @JsonNaming(SnakeCaseStrategy.class)
    record Lens(double focalPx, Pair centrePx, double k1, double k2) {

        static Lens of(PinholeCamera camera) {
            return new Lens(
                    camera.focalPx(), new Pair(camera.centreXPx(), camera.centreYPx()), camera.k1(), camera.k2());
        }

        PinholeCamera camera() {
            return new PinholeCamera(focalPx, centrePx.x, centrePx.y, k1, k2);
        }
    }

    /** A stretch of the traced outline with a weak edge, counter-clockwise. */
    @JsonNaming(SnakeCaseStrategy.class)
    record UnsureEntry(Pair from, Pair to) {

        static UnsureEntry of(UncertainStretch unsure) {
            return new UnsureEntry(Pair.of(unsure.from()), Pair.of(unsure.to()));
        }

        UncertainStretch unsure() {
            return new UncertainStretch(from.place(), to.place());
        }
    }

    /** A measure taken on the knife: its width at a distance from the tip, or the blade's length where that is null. */
    @JsonNaming(SnakeCaseStrategy.class)
    record CaliperEntry(
            @JsonSetter(nulls = Nulls.SET) @Nullable Double fromTip, double measured, double outline) {

        static CaliperEntry of(CaliperMeasure caliper) {
            return new CaliperEntry(
                    caliper.fromTipMm().isPresent() ? caliper.fromTipMm().getAsDouble() : null,
                    caliper.mm(),
                    caliper.outlineMm());
        }

        CaliperMeasure caliper() {
            return fromTip == null
                    ? new CaliperMeasure(OptionalDouble.empty(), JobFields.BLADE_LENGTH.checkedMm(measured), outline)
                    : new CaliperMeasure(
                            OptionalDouble.of(JobFields.WIDTH_PLACE.checkedMm(fromTip)),
                            JobFields.WIDTH.checkedMm(measured),
                            outline);
        }
    }

    /** A silhouette: nodes, counter-clockwise as seen from above, and landmarks. */
    @JsonNaming(SnakeCaseStrategy.class)
    record Shape(
            List<ShapeNode> nodes,
            Pair tip,
            Pair heel,
            Pair spineStart,
            Pair butt,
            @JsonSetter(nulls = Nulls.SET) @Nullable GuardEntry guard,
            Side spineSide) {

        static Shape of(Silhouette silhouette) {
            Landmarks at = silhouette.landmarks();
            return new Shape(
                    silhouette.outline().nodes().stream().map(ShapeNode::of).toList(),
                    Pair.of(at.tip()),
                    Pair.of(at.heel()),
                    Pair.of(at.spineStart()),
                    Pair.of(at.butt()),
                    at.guard().map(GuardEntry::of).orElse(null),
                    Side.spine(silhouette.spineOnLeft()));
        }

        Silhouette silhouette() {
            return new Silhouette(
                    new Outline(nodes.stream().map(ShapeNode::node).toList()),
                    new Landmarks(
                            tip.place(),
                            heel.place(),
                            spineStart.place(),
                            butt.place(),
                            Optional.ofNullable(guard).map(GuardEntry::guard)),
                    spineSide == Side.LEFT);
        }
    }

    /** A guard, by the points of the outline at its front and its back. */
    @JsonNaming(SnakeCaseStrategy.class)
    record GuardEntry(Pair front, Pair back) {

        static GuardEntry of(Guard guard) {
            return new GuardEntry(Pair.of(guard.front()), Pair.of(guard.back()));
        }

        Guard guard() {
            return new Guard(front.place(), back.place());
        }
    }

    /** A side as seen along the knife towards its tip, from above. */
    enum Side {
        LEFT,
        RIGHT;

        static Side spine(boolean onLeft) {
            return onLeft ? LEFT : RIGHT;
        }
    }

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y", "sharp"})
    record ShapeNode(double x, double y, boolean sharp) {

        static ShapeNode of(OutlineNode node) {
            return new ShapeNode(node.at().x(), node.at().y(), node.sharp());
        }

        OutlineNode node() {
            return new OutlineNode(new Pair(x, y).place(), sharp);
        }
    }

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y"})
    record Pair(double x, double y) {

        static Pair of(Point point) {
            return new Pair(point.x(), point.y());
        }

        Point point() {
            return new Point(x, y);
        }

        /** A point of a knife, checked to be within bounds. */
        Point place() {
            if (Math.abs(x) > GREATEST_COORDINATE_MM || Math.abs(y) > GREATEST_COORDINATE_MM) {
                throw new IllegalArgumentException("a point of the knife at " + this);
            }
            return point();
        }
    }

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y", "z"})
    record Triple(double x, double y, double z) {

        static Triple of(Vector3 vector) {
            return new Triple(vector.x(), vector.y(), vector.z());
        }

        Vector3 vector() {
            return new Vector3(x, y, z);
        }
    }
}
