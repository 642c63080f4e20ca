package weltwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import weltwright.assembly.AssemblyPlan;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.Backup;
import weltwright.io.FileKind;
import weltwright.io.FileNames;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.layout.cost.SheathCost;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.print.PatternPdf;
import weltwright.sheath.pattern.Pattern;
import weltwright.units.PrintScale;

/**
 * The files that {@code make} writes: the job, and the pattern in each file format.
 *
 * @param job file of the job, named after the input
 * @param name of the job file without extension, with which the names of the patterns begin
 */
record MakeOutputFiles(Path folder, Path job, String name) {
    private static final Messages TEXTS = Messages.of(MakeOutputFiles.class);

    private static final List<PatternFile> PATTERNS = List.of(
            new PatternFile(
                    "-pattern.pdf",
                    PatternPdf.KIND,
                    (output, file) -> PatternPdf.write(
                            output.pattern(),
                            output.plan(),
                            output.cost(),
                            output.heading(),
                            output.paper(),
                            output.printer(),
                            file)),
            new PatternFile("-pattern.svg", CutterSvg.KIND, (output, file) -> CutterSvg.write(output.cut(), file)),
            new PatternFile("-pattern.dxf", CutterDxf.KIND, (output, file) -> CutterDxf.write(output.cut(), file)));

    /** A file format of the pattern, with its writer. */
    private record PatternFile(String suffix, FileKind kind, Writer writer) {}

    @FunctionalInterface
    private interface Writer {
        void write(Drawn made, Path file);
    }

    /**
     * A pattern with all that its files contain.
     *
     * @param cost of the sheath without offcuts; empty where the maker has set no prices
     * @param cut the pattern laid out for the cutting machine
     */
    record Drawn(
            Pattern pattern,
            AssemblyPlan plan,
            Optional<SheathCost> cost,
            CutPlan cut,
            PageHeading heading,
            PaperSize paper,
            PrintScale printer) {}

    /**
     * Returns the files for an input, without writing them. Checks before the long work whether they can be written.
     *
     * @throws UserFacingException where the folder is not writable, or contains a file of another kind under such a
     *     name
     */
    static MakeOutputFiles in(Path folder, Path source) {
        Path folderOrAncestor = folder.toAbsolutePath();
        while (!Files.exists(folderOrAncestor) && folderOrAncestor.getParent() != null) {
            folderOrAncestor = folderOrAncestor.getParent();
        }
        if (!Files.isDirectory(folderOrAncestor)) {
            throw new UserFacingException(
                    TEXTS.text("make-output-files.is-not-a-folder", folderOrAncestor),
                    TEXTS.text("make-output-files.give-another-folder-for-the"));
        }
        if (!Files.isWritable(folderOrAncestor)) {
            throw notWritable(folderOrAncestor, null);
        }
        String name = String.valueOf(source.getFileName()).replaceFirst("\\.[^.]*$", "");
        List<String> suffixes = Stream.concat(
                        Stream.of(JobFile.EXTENSION + Backup.SUFFIX),
                        PATTERNS.stream().map(PatternFile::suffix))
                .toList();
        String fittingName = FileNames.truncated(name, suffixes);
        MakeOutputFiles output =
                new MakeOutputFiles(folder, folder.resolve(fittingName + JobFile.EXTENSION), fittingName);
        if (Files.isDirectory(folder)) {
            AtomicFile.of(output.job, JobFile.KIND).check();
            PATTERNS.forEach(p -> AtomicFile.of(output.file(p), p.kind()).check());
        }
        return output;
    }

    /**
     * Throws {@link UserFacingException} where the folder has a pattern but not its job, so that its origin is not
     * known.
     */
    void checkNoOrphanPattern() {
        Optional<Path> orphan = Files.exists(job)
                ? Optional.empty()
                : PATTERNS.stream().map(this::file).filter(Files::exists).findFirst();
        if (orphan.isPresent()) {
            throw new UserFacingException(
                    TEXTS.text("make-output-files.there-is-a-pattern-already", orphan.get()),
                    TEXTS.text("make-output-files.give-another-folder-or-say"));
        }
    }

    List<Path> files() {
        return Stream.concat(Stream.of(job), PATTERNS.stream().map(this::file)).toList();
    }

    private Path file(PatternFile pattern) {
        return folder.resolve(name + pattern.suffix());
    }

    /**
     * Writes the job, before the patterns, which can be made again from it.
     *
     * @param before version of the file when it was read
     * @return its new version
     */
    FileVersion write(Job output, FileVersion before) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw notWritable(folder, e);
        }
        return JobFile.write(output, before);
    }

    void write(Drawn output) {
        PATTERNS.forEach(p -> p.writer().write(output, file(p)));
    }

    private static UserFacingException notWritable(Path folder, @Nullable IOException cause) {
        return new UserFacingException(
                TEXTS.text("make-output-files.the-folder-cannot-be-written", folder),
                TEXTS.text("make-output-files.choose-another-or-have-the"),
                cause);
    }
}
