package weltwright.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import weltwright.bench.BenchPlan;
import weltwright.cutter.CutPlan;
import weltwright.cutter.CutterDxf;
import weltwright.cutter.CutterSvg;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.measure.PrintScale;
import weltwright.paper.Heading;
import weltwright.paper.PaperSize;
import weltwright.paper.PatternPdf;
import weltwright.sheath.Pattern;
import weltwright.trouble.Trouble;

/** The files that {@code make} writes, named after the photo or job that they are made from. */
record MadeFiles(Path folder, Path job, Path pdf, Path svg, Path dxf) {

    /**
     * The files, none of them written yet.
     *
     * @throws Trouble where the folder cannot take them, which is better known before the long work than after
     */
    static MadeFiles in(Path folder, Path source) {
        Path there = folder.toAbsolutePath();
        while (!Files.exists(there) && there.getParent() != null) {
            there = there.getParent();
        }
        if (!Files.isDirectory(there)) {
            throw new Trouble(there + " is not a folder.", "Give another folder for the files.");
        }
        if (!Files.isWritable(there)) {
            throw unwritable(there, null);
        }
        String name = String.valueOf(source.getFileName()).replaceFirst("\\.[^.]*$", "");
        return new MadeFiles(
                folder,
                folder.resolve(name + JobFile.EXTENSION),
                folder.resolve(name + "-pattern.pdf"),
                folder.resolve(name + "-pattern.svg"),
                folder.resolve(name + "-pattern.dxf"));
    }

    /**
     * Makes sure that nothing is written over that the program could not make again: an outline corrected by hand, or
     * what somebody wrote into another job of that name.
     */
    void spareHandwork(Path source, Job next) {
        if (!Files.exists(job) || sameFile(job, source)) {
            return;
        }
        Job there = JobFile.read(job);
        if (there.isCorrected()
                || there.spineOnLeft().isPresent() && !there.spineOnLeft().equals(next.spineOnLeft())
                || !there.calipers().isEmpty() && !there.calipers().equals(next.calipers())
                || holdsMore(there.customer(), next.customer())
                || holdsMore(there.knifeName(), next.knifeName()) || holdsMore(there.notes(), next.notes())
                || there.due().isPresent() && !there.due().equals(next.due())) {
            throw new Trouble(
                    "There is a job " + job + " already, with an outline corrected by hand or with other words in it.",
                    "Make the pattern from that job, or give another folder.");
        }
    }

    private static boolean holdsMore(String there, String next) {
        return !there.isBlank() && !there.equals(next);
    }

    private static boolean sameFile(Path one, Path other) {
        try {
            return Files.isSameFile(one, other);
        } catch (IOException e) {
            return false;
        }
    }

    List<Path> files() {
        return List.of(job, pdf, svg, dxf);
    }

    /** @param cut the same pattern laid out for a cutter */
    void write(Job made, Pattern pattern, CutPlan cut, Heading heading, PaperSize paper, PrintScale printer) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw unwritable(folder, e);
        }
        // The job first: from it the others can be made again.
        JobFile.write(made, job);
        PatternPdf.write(pattern, BenchPlan.of(pattern), heading, paper, printer, pdf);
        CutterSvg.write(cut, svg);
        CutterDxf.write(cut, dxf);
    }

    private static Trouble unwritable(Path folder, IOException cause) {
        return new Trouble(
                "The folder " + folder + " cannot be written.",
                "Choose another, or have the right to write there given to you.",
                cause);
    }
}
