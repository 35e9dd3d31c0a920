package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.inspection.Job;
import io.github.firstoff.proof.Claim;
import io.github.firstoff.report.kind.Stationery;
import io.github.firstoff.report.model.ReportModel;
import java.util.List;
import java.util.Optional;

/** A sheet that was made and not printed yet. */
interface MadeSheet {
    /** What it says and where it comes from. */
    Claim claim();

    /** What should be known of the inputs. */
    List<String> notices();

    /** Why no page can be printed; empty where it can. */
    default List<String> refusals() {
        return List.of();
    }

    /** Whose paper it is printed on; empty for plain paper. */
    Optional<House> house();

    /** Its pages. */
    ReportModel pages(Stationery stationery);

    /** The person whose position is known; empty if nobody is named. */
    default Optional<Job.Person> named() {
        return Optional.empty();
    }

    /** The result in a few lines for a terminal. */
    List<String> lines();

    /** Whether everything is as it should be. */
    boolean accepted();
}
