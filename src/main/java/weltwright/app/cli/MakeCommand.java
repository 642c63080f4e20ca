package weltwright.app.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import weltwright.assembly.AssemblyPlan;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.Backup;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PhoneLensStore;
import weltwright.job.PriceFile;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterBed;
import weltwright.output.print.PatternPdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.PrintScale;

@Command(name = "make", mixinStandardHelpOptions = true, abbreviateSynopsis = true, sortOptions = false)
final class MakeCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(MakeCommand.class);

    private final TerminalProgress terminal;
    private final PhoneLensStore lensStore;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "PHOTO|JOB", descriptionKey = "photo-job")
    private Path file;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "DIR",
            required = true)
    private Path folder;

    @Option(names = "--force")
    private boolean force;

    @Mixin
    private KnifeOptions knife;

    @Mixin
    private PhoneOption phone;

    @Mixin
    private KnifeCrossSectionOptions crossSection;

    @Mixin
    private ThicknessPhotoOptions thickness;

    @Mixin
    private SheathOptions sheath;

    @Mixin
    private OrderOptions order;

    @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "a4")
    private PaperSize paper;

    @Option(names = "--printed-square", paramLabel = "ACROSS,DOWN")
    private @Nullable String printedSquare;

    @Mixin
    private CutterOptions cutter;

    MakeCommand(TerminalProgress terminal, PhoneLensStore lensStore) {
        this.terminal = terminal;
        this.lensStore = lensStore;
    }

    @Override
    public void run() {
        PrintScale scale = printedSquare == null ? PrintScale.TRUE : LengthPair.PRINTED_SQUARE.readScale(printedSquare);
        MakeOutputFiles files = MakeOutputFiles.in(folder, file);
        CutterBed bed = cutter.toBed();
        ExistingJob existing = ExistingJob.of(files.job(), file, force);
        Job before = JobFile.isJob(file) ? JobFile.read(file) : newJob(Photo.read(file), existing);
        Job given = withOptions(before);
        existing.checkPhoto(given);
        if (!force) {
            files.checkNoOrphanPattern();
        }
        Job job;
        MakeOutputFiles.Drawn output;
        FileVersion savedVersion;
        try (terminal) {
            ProgressListener progress = (step, done) -> terminal.at(step, 0.9 * done);
            Job traced = given.traced(progress);
            boolean newlyTraced = given.silhouette().isEmpty();
            job = thickness.applyTo(knife.applyTo(newlyTraced ? traced.withGuardOf(before) : traced), progress);
            existing.checkReplacementBy(job);
            terminal.at(TEXTS.text("make-command.making-the-pattern"), 0.9);
            output = pattern(job, given, bed, scale, files, existing.version());
            terminal.at(TEXTS.text("make-command.writing"), 0.95);
            savedVersion = files.write(job, existing.version());
            files.write(output);
        }
        PrintWriter out = spec.commandLine().getOut();
        TextReport.print(job, out);
        KnifeOptions.printAssumed(job.settings(), out);
        ThicknessPhotoOptions.print(job.settings().thickness(), out);
        TextReport.print(output.pattern(), out);
        output.cut().advice().forEach(out::println);
        PatternPdf.unprintable(output.heading()).ifPresent(out::println);
        files.files().forEach(file -> out.println(TEXTS.text("make-command.written", file)));
        if (existing.version().sha256().isPresent() && !existing.version().equals(savedVersion)) {
            out.println(TEXTS.text("make-command.the-job-before-is-kept", Backup.of(files.job())));
        }
    }

    /**
     * Makes the pattern. Where the choices do not allow one and the photo was traced just now, saves the job before it
     * throws, so that the trace is not lost.
     */
    private MakeOutputFiles.Drawn pattern(
            Job job, Job untraced, CutterBed bed, PrintScale scale, MakeOutputFiles files, FileVersion existing) {
        try {
            Pattern pattern = job.assumingUsualThicknesses().pattern();
            PageHeading heading = new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
            CutPlan cut = CutPlan.of(pattern, bed, heading);
            Optional<SheathCost> cost = PriceWarning.ifReadable(
                            PriceFile.standard(), spec.commandLine().getOut())
                    .map(prices -> SheathCost.of(SheathNeeds.withoutOffcuts(pattern), prices));
            return new MakeOutputFiles.Drawn(pattern, AssemblyPlan.of(pattern), cost, cut, heading, paper, scale);
        } catch (UserFacingException e) {
            if (untraced.silhouette().isPresent()) {
                throw e;
            }
            files.write(job, existing);
            throw new UserFacingException(
                    e.getMessage(), TEXTS.text("make-command.the-traced-outline-is-saved", files.job()), e);
        }
    }

    private static Job newJob(Photo photo, ExistingJob existing) {
        return Job.begin(existing.dateFor(photo)).withPhoto(photo);
    }

    /** Returns the job with the options applied, before its photo is traced. */
    private Job withOptions(Job job) {
        TraceSettings knifeSettings = crossSection.applyTo(knife.applyTo(job.settings()));
        TraceSettings settings = JobFile.isJob(file)
                ? phone.applyIfNamed(knifeSettings, lensStore)
                : phone.applyTo(knifeSettings, job.photo().orElseThrow(), lensStore);
        boolean tracedAnew = job.photo().isPresent() && !settings.equals(job.settings());
        if (tracedAnew && job.isCorrectedBesidesGuard()) {
            throw new UserFacingException(
                    TEXTS.text("make-command.the-outline-in-was-corrected", file),
                    TEXTS.text("make-command.leave-those-options-out-or"));
        }
        Job withOrder = order.applyTo(job.withSettings(settings));
        return withOrder
                .withSpec(sheath.applyTo(withOrder.spec()))
                .withShaping(crossSection.applyTo(withOrder.shaping()));
    }
}
