package io.github.firstoff.intake;

import io.github.firstoff.intake.Fault.Where;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A short element of a QIF document with everything in it.
 *
 * @param name its name
 * @param attributes its attributes
 * @param text its own text without surrounding space
 * @param children its children in the order of the document
 * @param where the place behind its start tag
 */
record QifNode(String name, Map<String, String> attributes, String text, List<QifNode> children, Where where) {
    QifNode {
        attributes = Map.copyOf(attributes);
        children = List.copyOf(children);
    }

    /** The first child of that name. */
    Optional<QifNode> child(String wanted) {
        return children.stream().filter(each -> each.name.equals(wanted)).findFirst();
    }

    /** What a path of child names leads to. */
    Optional<QifNode> at(String... path) {
        Optional<QifNode> found = Optional.of(this);
        for (String step : path) {
            found = found.flatMap(node -> node.child(step));
        }
        return found;
    }

    /** The text to which a path of child names leads, if there is any. */
    Optional<String> textAt(String... path) {
        return at(path).map(QifNode::text).filter(found -> !found.isEmpty());
    }

    /** Whether a path of child names leads to the word true (or 1, as XML Schema allows). */
    boolean isTrue(String... path) {
        return textAt(path)
                .filter(word -> word.equals("true") || word.equals("1"))
                .isPresent();
    }

    Optional<String> attribute(String wanted) {
        return Optional.ofNullable(attributes.get(wanted));
    }
}
