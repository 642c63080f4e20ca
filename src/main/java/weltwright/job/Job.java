package weltwright.job;

import java.time.LocalDate;
import java.util.Optional;
import weltwright.knife.Silhouette;
import weltwright.photo.Photo;
import weltwright.sheath.SheathSpec;
import weltwright.trace.Trace;
import weltwright.trace.TraceSettings;

/**
 * All of a customer's job. Its pattern is not kept but made anew: the same job gives the same pattern to the last hole.
 *
 * @param customer whose knife it is; may be empty
 * @param knifeName what the maker calls the knife; may be empty
 * @param begun the day it was begun
 * @param due the day it is to be ready, if one was named
 * @param notes free text
 * @param photo the picture, if there is one
 * @param settings what was told about the picture
 * @param trace what came out of the picture, before any correction; empty until it is traced
 * @param silhouette the outline that the pattern is made from: the trace's, or as the user corrected it
 * @param edgeThicknessMm thickness of the blade behind its edge
 * @param spec what the maker chose
 */
public record Job(
        String customer,
        String knifeName,
        LocalDate begun,
        Optional<LocalDate> due,
        String notes,
        Optional<Photo> photo,
        TraceSettings settings,
        Optional<Trace> trace,
        Optional<Silhouette> silhouette,
        double edgeThicknessMm,
        SheathSpec spec) {}
