package weltwright.window;

import java.awt.print.PrinterException;
import java.awt.print.PrinterJob;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import weltwright.bench.BenchPlan;
import weltwright.cutter.CutPlan;
import weltwright.cutter.CutterBed;
import weltwright.cutter.CutterDxf;
import weltwright.cutter.CutterSvg;
import weltwright.ground.ReferenceSheet;
import weltwright.io.FileKind;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.paper.Heading;
import weltwright.paper.PaperSize;
import weltwright.paper.PatternPdf;
import weltwright.paper.PrintPages;
import weltwright.paper.SheetPdf;
import weltwright.sheath.Pattern;
import weltwright.trouble.Trouble;

/** The reference sheet and the pattern to files and to the printer. */
final class Output {
    private final Bench bench;
    private final Supplier<Optional<Pattern>> pattern;
    private final HomePrinter printer;
    private final HomeCutter cutter;
    private final Work work;
    private final FileAsker asker;
    private final Consumer<String> notice;

    /** @param pattern the pattern of the job as it now is */
    Output(
            Bench bench,
            Supplier<Optional<Pattern>> pattern,
            HomePrinter printer,
            HomeCutter cutter,
            Work work,
            FileAsker asker,
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
    void saveSheet() {
        saveSheet(sheet());
    }

    void saveSheet(ReferenceSheet sheet) {
        asker.toSave("Save the reference sheet", "reference-sheet-" + sheet.pageName(), "PDF", "pdf", SheetPdf.KIND)
                .ifPresent(file -> write("Saving the sheet", file, () -> {
                    SheetPdf.write(sheet, file);
                    return Optional.empty();
                }));
    }

    void printSheet() {
        ReferenceSheet sheet = sheet();
        print("Printing the sheet", () -> SheetPdf.pages(sheet));
    }

    void savePdf() {
        pattern.get()
                .ifPresent(made -> asker.toSave("Save the pattern", name() + "-pattern", "PDF", "pdf", PatternPdf.KIND)
                        .ifPresent(file -> {
                            Heading heading = heading();
                            PaperSize paper = printer.paper();
                            var scale = printer.scale();
                            write("Saving the pattern", file, () -> {
                                PatternPdf.write(made, BenchPlan.of(made), heading, paper, scale, file);
                                return PatternPdf.unprintable(heading);
                            });
                        }));
    }

    void saveSvg() {
        saveForCutter("SVG", "svg", CutterSvg.KIND, CutterSvg::write);
    }

    void saveDxf() {
        saveForCutter("DXF", "dxf", CutterDxf.KIND, CutterDxf::write);
    }

    private void saveForCutter(String kind, String extension, FileKind content, BiConsumer<CutPlan, Path> how) {
        pattern.get()
                .ifPresent(made -> asker.toSave(
                                "Save for a cutting machine", name() + "-pattern", kind, extension, content)
                        .ifPresent(file -> {
                            Heading heading = heading();
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

    void print() {
        pattern.get().ifPresent(made -> {
            Heading heading = heading();
            PaperSize paper = printer.paper();
            var scale = printer.scale();
            print("Printing the pattern", () -> PatternPdf.pages(made, BenchPlan.of(made), heading, paper, scale));
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
                        throw new Trouble(
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

    private Heading heading() {
        Job job = bench.job();
        return new Heading(job.customer(), job.knifeName(), job.begun(), job.notes());
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
