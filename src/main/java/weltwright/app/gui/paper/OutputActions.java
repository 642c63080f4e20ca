package weltwright.app.gui.paper;

import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.assembly.AssemblyPlan;
import weltwright.error.UserFacingException;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.io.FileKind;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.output.PageHeading;
import weltwright.output.PaperSize;
import weltwright.output.cutter.CutPlan;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.CutterDxf;
import weltwright.output.cutter.CutterSvg;
import weltwright.output.pdf.PrintPages;
import weltwright.output.print.PatternPdf;
import weltwright.output.print.SheetPdf;
import weltwright.sheath.pattern.Pattern;

/** The reference sheet and the pattern to files and to the printer. */
public final class OutputActions {
    private final JobModel bench;
    private final Supplier<Optional<Pattern>> pattern;
    private final PrinterPreferences printer;
    private final CutterPreferences cutter;
    private final TaskQueue work;
    private final FileDialogs asker;
    private final Consumer<String> notice;

    /** @param pattern the pattern of the job as it now is */
    public OutputActions(
            JobModel bench,
            Supplier<Optional<Pattern>> pattern,
            PrinterPreferences printer,
            CutterPreferences cutter,
            TaskQueue work,
            FileDialogs asker,
            Consumer<String> notice) {
        this.bench = bench;
        this.pattern = pattern;
        this.printer = printer;
        this.cutter = cutter;
        this.work = work;
        this.asker = asker;
        this.notice = notice;
    }

    /** The sheet for the paper that this printer takes. */
    public void saveSheet() {
        saveSheet(sheet());
    }

    public void saveSheet(ReferenceSheet sheet) {
        asker.toSave("Save the reference sheet", "reference-sheet-" + sheet.pageName(), "PDF", "pdf", SheetPdf.KIND)
                .ifPresent(file -> write("Saving the sheet", file, () -> {
                    SheetPdf.write(sheet, file);
                    return Optional.empty();
                }));
    }

    public void printSheet() {
        ReferenceSheet sheet = sheet();
        print("Printing the sheet", () -> SheetPdf.pages(sheet));
    }

    public void savePdf() {
        pattern.get()
                .ifPresent(made -> asker.toSave("Save the pattern", name() + "-pattern", "PDF", "pdf", PatternPdf.KIND)
                        .ifPresent(file -> {
                            PageHeading heading = heading();
                            PaperSize paper = printer.paper();
                            var scale = printer.scale();
                            write("Saving the pattern", file, () -> {
                                PatternPdf.write(made, AssemblyPlan.of(made), heading, paper, scale, file);
                                return PatternPdf.unprintable(heading);
                            });
                        }));
    }

    public void saveSvg() {
        saveForCutter("SVG", "svg", CutterSvg.KIND, CutterSvg::write);
    }

    public void saveDxf() {
        saveForCutter("DXF", "dxf", CutterDxf.KIND, CutterDxf::write);
    }

    private void saveForCutter(String kind, String extension, FileKind content, BiConsumer<CutPlan, Path> how) {
        pattern.get()
                .ifPresent(made -> asker.toSave(
                                "Save for a cutting machine", name() + "-pattern", kind, extension, content)
                        .ifPresent(file -> {
                            PageHeading heading = heading();
                            CutterBed bed = cutter.bed();
                            work.start(
                                    "Saving the pattern",
                                    () -> {
                                        CutPlan plan = CutPlan.of(made, bed, heading);
                                        how.accept(plan, file);
                                        return plan;
                                    },
                                    plan -> notice.accept((String.join(" ", plan.advice()) + " Saved: " + file
                                                    + ". Cut the 50 mm square first, and measure it before you trust the machine.")
                                            .strip()));
                        }));
    }

    public void print() {
        pattern.get().ifPresent(made -> {
            PageHeading heading = heading();
            PaperSize paper = printer.paper();
            var scale = printer.scale();
            print("Printing the pattern", () -> PatternPdf.pages(made, AssemblyPlan.of(made), heading, paper, scale));
        });
    }

    /** @param how writes the file, and gives back what else the user should know of it */
    private void write(String title, Path file, Callable<Optional<String>> how) {
        work.start(
                title,
                how,
                toKnow -> notice.accept(
                        "Saved: " + file + ". Print it at actual size (100 %) and measure" + " before you trust it."
                                + toKnow.map(words -> " " + words).orElse("")));
    }

    private void print(String title, Callable<PrintPages> pages) {
        work.start(title, pages, made -> ask(title, made));
    }

    /** The printer's own dialog, then the printing beside the window. */
    private void ask(String title, PrintPages pages) {
        PrinterJob job = PrinterJob.getPrinterJob();
        if (job.getPrintService() == null) {
            pages.close();
            notice.accept("This computer knows of no printer. Save the PDF and print it where there is one, at actual"
                    + " size (100 %).");
            return;
        }
        job.setPageable(pages);
        if (!job.printDialog()) {
            pages.close();
            return;
        }
        work.start(
                title,
                () -> {
                    try (pages) {
                        job.print();
                        return pages;
                    } catch (PrinterException e) {
                        throw new UserFacingException(
                                "The printer did not take the pages.",
                                "See whether it is on and has paper, or save the PDF and print that.",
                                e);
                    }
                },
                done -> notice.accept("Sent to the printer. Measure the 50 mm square on the paper before you cut."));
    }

    private String name() {
        return JobFile.suggestedName(bench.job());
    }

    private PageHeading heading() {
        Job job = bench.job();
        return new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
    }

    private ReferenceSheet sheet() {
        return switch (printer.paper()) {
            case A4, ONE_LARGE_PAGE -> ReferenceSheet.A4;
            case LETTER -> ReferenceSheet.LETTER;
            case A3 -> ReferenceSheet.A3;
            case TABLOID -> ReferenceSheet.TABLOID;
        };
    }
}
