/** Never folded away: what can hurt someone, or someone else's water. Statements 10 to 13 of the calculation handbook, section 12. */
export function DripCaution() {
  return (
    <div class="drip-caution">
      <p>
        <strong>Water under pressure, other people’s water, electricity.</strong> A plan, not an engineering design:
        local code and licensed trades come first.
      </p>
      <ul>
        <li>
          Wherever drinking or shared water is joined, a backflow device that the authority approves keeps yours out of
          it. Fertiliser or anything else fed in usually needs a stricter one, and the label is law.
        </li>
        <li>
          Pumps, wells and controllers: a licensed electrician, ground-fault protection, a disconnect in sight; no work
          live or wet.
        </li>
        <li>
          Pressure and surge together stay below what the pipe stands at its temperature. Open and close valves slowly,
          fit relief where it can rise, and never test with air: it bursts like a bomb.
        </li>
        <li>Water right, well permit and metering are yours to check.</li>
      </ul>
    </div>
  );
}
