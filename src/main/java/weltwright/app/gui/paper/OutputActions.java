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
import weltwright.job.PriceFile;
import weltwright.layout.cost.SheathCost;
import weltwright.layout.cost.SheathNeeds;
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
import weltwright.units.MeasureUnit;

/** Saves and prints the reference sheet and the pattern. */
public final class OutputActions {
    private final JobModel model;
    private final Supplier<Optional<Pattern>> pattern;
    private final PrinterPreferences printerPreferences;
    private final CutterPreferences cutterPreferences;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final Consumer<String> notifier;
    private final BiConsumer<String, Path> savedNotifier;

    /**
     * @param pattern returns the pattern of the present job; empty where there is none
     * @param savedNotifier shows a message about a saved file
     */
    public OutputActions(
            JobModel model,
            Supplier<Optional<Pattern>> pattern,
            PrinterPreferences printerPreferences,
            CutterPreferences cutterPreferences,
            TaskQueue tasks,
            FileDialogs dialogs,
            Consumer<String> notifier,
            BiConsumer<String, Path> savedNotifier) {
        this.model = model;
        this.pattern = pattern;
        this.printerPreferences = printerPreferences;
        this.cutterPreferences = cutterPreferences;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.notifier = notifier;
        this.savedNotifier = savedNotifier;
    }

    /** Saves the reference sheet for the printer's paper. */
    public void saveSheet() {
        saveSheet(sheet());
    }

    public void saveSheet(ReferenceSheet sheet) {
        dialogs.chooseSaveFile(
                        "Save the reference sheet", "reference-sheet-" + sheet.pageName(), "PDF", "pdf", SheetPdf.KIND)
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
                .ifPresent(made -> dialogs.chooseSaveFile(
                                "Save the pattern", baseName() + "-pattern", "PDF", "pdf", PatternPdf.KIND)
                        .ifPresent(file -> {
                            PageHeading heading = heading();
                            PaperSize paper = printerPreferences.paper();
                            var scale = printerPreferences.scale();
                            MeasureUnit unit = model.unit();
                            write("Saving the pattern", file, () -> {
                                PatternPdf.write(
                                        made, AssemblyPlan.of(made, unit), cost(made), heading, paper, scale, file);
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

    private void saveForCutter(String kind, String extension, FileKind fileKind, BiConsumer<CutPlan, Path> writer) {
        pattern.get()
                .ifPresent(made -> dialogs.chooseSaveFile(
                                "Save for a cutting machine", baseName() + "-pattern", kind, extension, fileKind)
                        .ifPresent(file -> {
                            PageHeading heading = heading();
                            CutterBed bed = cutterPreferences.bed();
                            tasks.submit(
                                    "Saving the pattern",
                                    () -> {
                                        CutPlan plan = CutPlan.of(made, bed, heading);
                                        writer.accept(plan, file);
                                        return plan;
                                    },
                                    plan -> savedNotifier.accept(
                                            (String.join(" ", plan.advice()) + " Saved: " + file
                                                            + ". Cut the 50 mm square first, and measure it before you trust the machine.")
                                                    .strip(),
                                            file));
                        }));
    }

    public void print() {
        pattern.get().ifPresent(made -> {
            PageHeading heading = heading();
            PaperSize paper = printerPreferences.paper();
            var scale = printerPreferences.scale();
            MeasureUnit unit = model.unit();
            print(
                    "Printing the pattern",
                    () -> PatternPdf.pages(made, AssemblyPlan.of(made, unit), cost(made), heading, paper, scale));
        });
    }

    private static Optional<SheathCost> cost(Pattern made) {
        return PriceFile.ifSet(PriceFile.standard())
                .map(prices -> SheathCost.of(SheathNeeds.withoutOffcuts(made), prices));
    }

    /** @param writer writes the file and returns an optional remark for the user */
    private void write(String title, Path file, Callable<Optional<String>> writer) {
        tasks.submit(
                title,
                writer,
                remark -> savedNotifier.accept(
                        "Saved: " + file + ". Print it at actual size (100 %) and measure before you trust it."
                                + remark.map(text -> " " + text).orElse(""),
                        file));
    }

    private void print(String title, Callable<PrintPages> pages) {
        tasks.submit(title, pages, made -> showPrintDialog(title, made));
    }

    /** Shows the print dialog and prints the pages in the background. */
    private void showPrintDialog(String title, PrintPages pages) {
        PrinterJob job = PrinterJob.getPrinterJob();
        if (job.getPrintService() == null) {
            pages.close();
            notifier.accept("This computer knows of no printer. Save the PDF and print it where there is one, at actual"
                    + " size (100 %).");
            return;
        }
        job.setPageable(pages);
        if (!job.printDialog()) {
            pages.close();
            return;
        }
        tasks.submit(
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
                done -> notifier.accept("Sent to the printer. Measure the 50 mm square on the paper before you cut."));
    }

    private String baseName() {
        return JobFile.suggestedName(model.job());
    }

    private PageHeading heading() {
        Job job = model.job();
        return new PageHeading(job.customer(), job.knifeName(), job.begun(), job.notes());
    }

    private ReferenceSheet sheet() {
        return switch (printerPreferences.paper()) {
            case A4, ONE_LARGE_PAGE -> ReferenceSheet.A4;
            case LETTER -> ReferenceSheet.LETTER;
            case A3 -> ReferenceSheet.A3;
            case TABLOID -> ReferenceSheet.TABLOID;
        };
    }
}
