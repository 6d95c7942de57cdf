/** Tests of the work card. */
package baymist.card;
