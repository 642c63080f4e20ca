package weltwright.job;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.knife.ThicknessProfile;
import weltwright.sheath.spec.SpecFields;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.LengthField;
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
        @JsonSetter(nulls = Nulls.SET) @Nullable LocalDate finished,
        String notes,
        @JsonSetter(nulls = Nulls.SET) @Nullable PictureEntry photo,
        Measured measured,
        @JsonSetter(nulls = Nulls.SET) @Nullable TraceJson trace,
        @JsonSetter(nulls = Nulls.SET) @Nullable SilhouetteJson outline,
        List<UncertainStretchJson> toLookAt,
        List<CaliperEntry> calipers,
        @JsonSetter(nulls = Nulls.SET) SilhouetteJson.@Nullable Side spineTold,
        SheathSpecJson sheath,
        CuttingPlanJson cutting,
        Map<String, LocalDateTime> workDone,
        Map<String, String> typed) {
    static final String FORMAT = "weltwright job";
    static final String UNITS = "mm";
    static final int VERSION = 14;

    /** Far more than there are fields. */
    private static final int MOST_TYPED = 200;

    /** Far more than a sheath has operations. */
    private static final int MOST_WORK_DONE = 1000;

    private static final int LONGEST_IDENTIFIER = 300;

    static JobDocument of(Job job) {
        return new JobDocument(
                FORMAT,
                VERSION,
                UNITS,
                job.customer(),
                job.knifeName(),
                job.begun(),
                job.due().orElse(null),
                job.finished().orElse(null),
                job.notes(),
                job.photo().map(PictureEntry::of).orElse(null),
                Measured.of(job.settings(), job.shaping()),
                job.trace().map(TraceJson::of).orElse(null),
                job.silhouette().map(SilhouetteJson::of).orElse(null),
                job.unsure().stream().map(UncertainStretchJson::of).toList(),
                job.calipers().stream().map(CaliperEntry::of).toList(),
                job.spineOnLeft().map(SilhouetteJson.Side::spine).orElse(null),
                SheathSpecJson.of(job.spec()),
                CuttingPlanJson.of(job.cutting()),
                new TreeMap<>(job.workDone()),
                new TreeMap<>(job.typed()));
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
                Optional.ofNullable(finished),
                JobFields.NOTES.read(notes),
                picture,
                measured.settings(),
                Optional.ofNullable(trace).map(TraceJson::trace),
                Optional.ofNullable(outline).map(SilhouetteJson::silhouette),
                toLookAt.stream().map(UncertainStretchJson::unsure).toList(),
                calipers.stream().map(CaliperEntry::caliper).toList(),
                Optional.ofNullable(spineTold).map(side -> side == SilhouetteJson.Side.LEFT),
                measured.shaping(),
                sheath.spec(),
                cutting.plan(),
                workDone.entrySet().stream()
                        .filter(entry -> entry.getKey().length() <= LONGEST_IDENTIFIER)
                        .limit(MOST_WORK_DONE)
                        .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue)),
                typed.entrySet().stream()
                        .filter(entry -> entry.getValue().length() <= JobFields.TYPED.longest())
                        .limit(MOST_TYPED)
                        .collect(
                                Collectors.toMap(Map.Entry::getKey, entry -> JobFields.TYPED.clean(entry.getValue()))));
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
            @JsonSetter(nulls = Nulls.SET) @Nullable Double handleThickness,
            @JsonSetter(nulls = Nulls.SET) @Nullable Double spineThickness,
            List<ThicknessEntry> thicknessAlong,
            double edgeThickness,
            Grind.Kind grind,
            double grindHeight,
            HandleSection handleSection,
            double handleSquareness,
            double tipDrop,

            @JsonProperty("focal_35mm") @JsonSetter(nulls = Nulls.SET) @Nullable
            Double focal35mm,

            PairJson sheetScale,
            String ground,
            List<MarkEntry> marks,
            @JsonSetter(nulls = Nulls.SET) @Nullable PhoneLensJson phone) {

        static Measured of(TraceSettings settings, CrossSectionShape shaping) {
            return new Measured(
                    orNull(settings.handleThicknessMm()),
                    orNull(settings.spineThicknessMm()),
                    settings.thickness().readings().stream()
                            .map(ThicknessEntry::of)
                            .toList(),
                    shaping.edgeThicknessMm(),
                    shaping.grind().kind(),
                    shaping.grind().heightMm(),
                    settings.handleSection(),
                    shaping.handleExponent(),
                    settings.tipDropMm(),
                    orNull(settings.focal35mm()),
                    new PairJson(
                            settings.sheetScale().x(), settings.sheetScale().y()),
                    settings.ground().words(),
                    settings.marks().stream().map(MarkEntry::of).toList(),
                    settings.phone().map(PhoneLensJson::of).orElse(null));
        }

        CrossSectionShape shaping() {
            return new CrossSectionShape(
                    JobFields.EDGE_THICKNESS.checkedMm(edgeThickness),
                    new Grind(grind, JobFields.GRIND_HEIGHT.checkedMm(grindHeight)),
                    SpecFields.HANDLE_SQUARENESS.checked(handleSquareness));
        }

        TraceSettings settings() {
            return new TraceSettings(
                    checked(SpecFields.HANDLE_THICKNESS, handleThickness),
                    checked(SpecFields.SPINE_THICKNESS, spineThickness),
                    JobFields.TIP_DROP.checkedMm(tipDrop),
                    focal35mm == null
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(JobFields.FOCAL_35MM.checked(focal35mm)),
                    new PrintScale(
                            JobFields.SHEET_SCALE.checked(sheetScale.x()),
                            JobFields.SHEET_SCALE.checked(sheetScale.y())),
                    GroundChoice.parse(ground),
                    Optional.ofNullable(phone).map(PhoneLensJson::lens),
                    new ThicknessProfile(
                            thicknessAlong.stream().map(ThicknessEntry::reading).toList()),
                    handleSection,
                    grind == Grind.Kind.DOUBLE_EDGED,
                    marks.stream().map(MarkEntry::mark).toList());
        }
    }

    private static @Nullable Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    private static OptionalDouble checked(LengthField field, @Nullable Double mm) {
        return mm == null ? OptionalDouble.empty() : OptionalDouble.of(field.checkedMm(mm));
    }

    /** A place of the photo at which the user told whether the knife is seen. */
    @JsonNaming(SnakeCaseStrategy.class)
    record MarkEntry(double x, double y, boolean knife) {

        static MarkEntry of(KnifeMark mark) {
            return new MarkEntry(mark.pixel().x(), mark.pixel().y(), mark.isKnife());
        }

        KnifeMark mark() {
            return new KnifeMark(new Point(JobFields.PHOTO_PLACE.checked(x), JobFields.PHOTO_PLACE.checked(y)), knife);
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

    /** A measure taken on the knife: its width at a distance from the tip, or the blade's length where that is null. */
    @JsonNaming(SnakeCaseStrategy.class)
    record CaliperEntry(
            @JsonSetter(nulls = Nulls.SET) @Nullable Double fromTip, double measured, double outline) {

        static CaliperEntry of(CaliperMeasure caliper) {
            return new CaliperEntry(orNull(caliper.fromTipMm()), caliper.mm(), caliper.outlineMm());
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
}
