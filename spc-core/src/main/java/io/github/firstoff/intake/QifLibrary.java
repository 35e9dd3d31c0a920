package io.github.firstoff.intake;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The QIF documents among the inputs of one run, by their identification, so that one may refer to another.
 *
 * <p>A reference is followed among these inputs alone: the address that a document states for another is never opened.
 */
final class QifLibrary {
    private final List<Input> inputs;
    private final Map<Input, Optional<QifDocument>> read = new HashMap<>();

    /**
     * A library of what is among the inputs; each is only opened when a reference needs it.
     *
     * @param inputs all inputs of the run
     */
    QifLibrary(List<Input> inputs) {
        this.inputs = List.copyOf(inputs);
    }

    /**
     * An element and the document in which it stands.
     *
     * @param document the document
     * @param node the element
     */
    record Entry(QifDocument document, QifNode node) {}

    /** Enters a document that is read by somebody else. */
    void put(Input input, QifDocument document) {
        read.put(input, Optional.of(document));
    }

    /** The document of that identification; two of the same are one too many. */
    private Optional<QifDocument> find(QifDocument from, QifDocument.External external) throws QifFault {
        QifDocument found = null;
        for (Input input : inputs) {
            QifDocument candidate = document(input).orElse(null);
            if (candidate == null
                    || !candidate.id().equals(external.id())
                    || external.id().isEmpty()) {
                continue;
            }
            if (found != null) {
                throw new QifFault(Fault.of(
                        FaultKind.CONTRADICTION,
                        external.where(),
                        Echo.plain(found.file()) + " and " + Echo.plain(candidate.file())
                                + " have the same identification, to which " + Echo.plain(from.file()) + " refers",
                        Echo.quoted(external.id()),
                        "one document of that identification"));
            }
            found = candidate;
        }
        return Optional.ofNullable(found);
    }

    /** The document that an input is; empty if it is none that can be read, which is told when the input itself is read. */
    private Optional<QifDocument> document(Input input) {
        Optional<QifDocument> known = read.get(input);
        if (known == null) {
            known = input.canBeReadAgain() ? index(input) : Optional.empty();
            if (input.canBeReadAgain()) {
                read.put(input, known);
            }
        }
        return known;
    }

    private static Optional<QifDocument> index(Input input) {
        try (InputBytes bytes = new InputBytes(input, Long.MAX_VALUE)) {
            if (!ReadingFormat.QIF.source().recognises(bytes.beginning())) {
                return Optional.empty();
            }
            return Optional.of(QifDocument.read(input.name(), QifText.of(bytes)));
        } catch (IOException toldWhenItIsRead) {
            return Optional.empty();
        }
    }

    /**
     * What a reference leads to.
     *
     * @param from where the reference stands
     * @param reference the element with the id, and an xId where it leads into another document
     * @param kind what it should lead to
     * @throws QifFault if it leads nowhere
     */
    Entry follow(QifDocument from, QifNode reference, QifDocument.Kind kind) throws QifFault {
        Optional<String> there = reference.attribute("xId");
        if (there.isEmpty()) {
            return new Entry(
                    from,
                    from.find(kind, reference.text())
                            .orElseThrow(() -> leadsNowhere(from, reference, kind, reference.text())));
        }
        QifDocument.External external = from.externals().get(reference.text());
        if (external == null) {
            throw new QifFault(Fault.of(
                    FaultKind.UNKNOWN_REFERENCE,
                    reference.where(),
                    "the file does not say which other document that is",
                    "the id " + Echo.quoted(reference.text()),
                    "the id of an ExternalQIFDocument"));
        }
        QifDocument target = find(from, external)
                .orElseThrow(() -> new QifFault(Fault.of(
                        FaultKind.UNKNOWN_REFERENCE,
                        external.where(),
                        "what was to be measured stands in a document that is not among the given files",
                        Echo.quoted(external.id())
                                + (external.uri().isEmpty() ? "" : ", at " + Echo.quoted(external.uri())),
                        "that file too, beside this one")));
        return new Entry(
                target,
                target.find(kind, there.get()).orElseThrow(() -> leadsNowhere(target, reference, kind, there.get())));
    }

    private static QifFault leadsNowhere(QifDocument target, QifNode reference, QifDocument.Kind kind, String id) {
        return new QifFault(Fault.of(
                FaultKind.UNKNOWN_REFERENCE,
                reference.where(),
                Echo.plain(target.file()) + " has no " + kind.word() + " of that id",
                Echo.quoted(id),
                "the id of one that is there"));
    }
}
